import { describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { COMMANDS } from '../../src/cli/commands.ts';
import { commandHelp, programHelp } from '../../src/cli/help.ts';
import { UsageError } from '../../src/cli/usage-error.ts';

const read = (line: string) => readCommandLine(line === '' ? [] : line.split(' '));

describe('a command line', () => {
	it.each([
		['', null, [], {}],
		['./tubes', null, ['./tubes'], {}],
		['--home d', null, [], { home: 'd' }],
		['layout a.json --json', 'layout', ['a.json'], { json: true }],
		['--json layout a.json', 'layout', ['a.json'], { json: true }],
		['--home d log', 'log', [], { home: 'd' }],
		['--home=d log 7', 'log', ['7'], { home: 'd' }],
		['check a.json b.json', 'check', ['a.json', 'b.json'], {}],
		['layout -- -odd.json', 'layout', ['-odd.json'], {}],
		['bend a.json --lines --no-learn', 'bend', ['a.json'], { lines: true, 'no-learn': true }],
		['bend a.json --resume', 'bend', ['a.json'], { resume: true }],
		['bend a.json --resume 17', 'bend', ['a.json'], { resume: '17' }],
		['bend a.json --resume=17', 'bend', ['a.json'], { resume: '17' }],
		['bend --resume 17 a.json', 'bend', ['a.json'], { resume: '17' }],
		['bend --resume a.json', 'bend', ['a.json'], { resume: true }],
		['bend a.json --resume a.json', 'bend', ['a.json'], { resume: 'a.json' }],
		['bend --resume --lines a.json', 'bend', ['a.json'], { resume: true, lines: true }],
		['layout --help', 'layout', [], { help: true }],
		['--version', null, [], { version: true }],
	])('%s', (line, command, operands, options) => {
		expect(read(line)).toEqual({ command, operands, options });
	});

	it.each([
		['bnd a.json', 'There is no command "bnd". The commands are bend, layout,'],
		['a.json', 'To bend a job write: pullbook bend a.json'],
		['toString', 'There is no command "toString"'],
		['layout', 'pullbook layout needs JOB: pullbook layout JOB'],
		['check', 'pullbook check needs JOB'],
		['layout a.json b.json', 'pullbook layout takes one JOB, but "a.json", "b.json" stand there'],
		['log 1 2 3', 'pullbook log takes ID ID|DIR, but "1", "2", "3" stand there'],
		[
			'layout a.json --lines',
			'pullbook layout has no option --lines. Its options are --json, --chalk, --no-learn, --mirror, --from, --home,',
		],
		['layout a.json --jsno', 'pullbook layout has no option --jsno'],
		['layout a.json -x', 'pullbook layout has no option -x'],
		['layout a.json --constructor', 'pullbook layout has no option --constructor'],
		['--json', 'pullbook has no option --json'],
		['layout a.json --home', '--home needs a value: --home DIR'],
		['layout a.json --home --json', '--home needs a value: --home DIR'],
		['layout a.json --home=', '--home needs a value: --home DIR'],
		['layout a.json --json=yes', '--json takes no value, but "yes" stands there'],
		['bend a.json --resume=', '--resume needs a value: --resume ID'],
		['layout a.json --home d --home e', '--home is given twice'],
		['practice a.json --seed', '--seed needs a value: --seed N'],
		['practice a.json --lines', 'pullbook practice has no option --lines'],
	])('%s is refused', (line, sentence) => {
		expect(() => read(line)).toThrow(UsageError);
		expect(() => read(line)).toThrow(sentence);
	});
});

describe('help', () => {
	it('lists every command, examples first', () => {
		const help = programHelp();
		for (const name of Object.keys(COMMANDS)) expect(help).toContain(`\n  pullbook ${name}`);
		expect(help.indexOf('Examples')).toBeLessThan(help.indexOf('Commands'));
	});

	it.each(Object.keys(COMMANDS))('of %s begins with examples that the parser takes, and names every option', (name) => {
		const help = commandHelp(name);
		expect(help.startsWith('Examples\n')).toBe(true);
		for (const [line] of COMMANDS[name]!.examples) {
			expect(readCommandLine(line.split(' ').slice(1)).command).toBe(name);
		}
		for (const option of [...Object.keys(COMMANDS[name]!.options), 'home', 'debug']) {
			expect(help).toContain(`--${option}`);
		}
	});

	it('fits a terminal of 80 columns', () => {
		const text = [programHelp(), ...Object.keys(COMMANDS).map(commandHelp)].join('\n');
		expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
	});

	it('of an unknown command is refused with the commands there are', () => {
		expect(() => commandHelp('bnd')).toThrow('There is no command "bnd" to help with. The commands are bend');
	});
});
