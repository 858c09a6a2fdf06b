import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROGRAM, type Run, type RunOptions, runProgram, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { runHere } from '../helpers/disk/run-here.ts';

const [JOB] = SAMPLE_JOBS as [string, ...string[]];
const JOB_DATA = JSON.parse(readFileSync(JOB, 'utf8'));

let home: string;
let badJob: string;
beforeAll(() => {
	if (!existsSync(PROGRAM)) throw new Error('The program is not built; run npm run build first.');
	home = mkdtempSync(join(tmpdir(), 'pullbook-cli-'));
	badJob = join(home, 'bad.json');
	const tube = { ...JOB_DATA.tube, od: -1, wall: 'thick' };
	writeFileSync(badJob, JSON.stringify({ ...JOB_DATA, tube, color: 'red' }));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** In a process of its own, and here where it is the command alone that matters. */
const start = (args: readonly string[], options: Partial<RunOptions> = {}) => runProgram(args, { home, ...options });
const run = (args: readonly string[], options: { home?: string } = {}) => runHere(args, { home, ...options });

function expectSentence({ out, err }: Pick<Run, 'out' | 'err'>): void {
	expect(out).toBe('');
	expect(err).toMatch(/^pullbook: .+[.)]\n$/);
	expect(err).not.toMatch(/\n\s+at /);
}

describe('a wrong command line', () => {
	it.each([
		[['bnd'], 'There is no command "bnd"'],
		[['layout'], 'needs JOB'],
		[['layout', JOB, '--lines'], 'has no option --lines'],
		[['layout', JOB, '--home'], '--home DIR'],
		[['help', 'bnd'], 'There is no command "bnd"'],
		[['practice', JOB], '--auto'],
		[[], 'pullbook layout'],
		[['./no-such-folder'], 'There is no folder "./no-such-folder"'],
		[['bend', JOB], '--lines'],
	])('%j: exit 2 and a sentence', async (args, text) => {
		const ended = await run(args);
		expect(ended.code).toBe(2);
		expect(ended.err).toContain(text);
		expectSentence(ended);
	});

	it('shows where it comes from with --debug only', async () => {
		const ended = await start(['layout', '--debug']);
		expect(ended.code).toBe(2);
		expect(ended.err).toMatch(/\n\s+at /);
	});
});

describe('help and version', () => {
	it.each([
		[['help'], 'Examples'],
		[['--help'], 'Commands'],
		[['help', 'bend'], '--resume [ID]'],
		[['bend', '--help'], '--resume [ID]'],
		[['--version'], JSON.parse(readFileSync('package.json', 'utf8')).version],
	])('%j', async (args, text) => {
		const ended = await (args[0] === '--version' ? start : run)(args);
		expect(ended).toMatchObject({ code: 0, err: '' });
		expect(ended.out).toContain(text);
	});
});

describe('layout and check', () => {
	it.each(SAMPLE_JOBS)('print %s', async (job) => {
		const [asText, asJson, checked] = await Promise.all([
			run(['layout', job]),
			run(['layout', job, '--json']),
			run(['check', job]),
		]);
		expect(asText.code).toBe(0);
		expect(asText.out).toContain(JSON.parse(readFileSync(job, 'utf8')).name);
		expect(asJson).toMatchObject({ code: 0, err: '' });
		const layout = JSON.parse(asJson.out);
		expect(layout.bends.length).toBeGreaterThan(0);
		expect(layout.corners).toHaveLength(layout.bends.length + 2);
		expect(checked.code).toBe(0);
	});

	it.each([['layout'], ['check']])('%s says every fault of a wrong file, exit 2', async (command) => {
		const ended = await run([command, badJob]);
		expect(ended.code).toBe(2);
		for (const place of ['tube.od', 'tube.wall', 'color']) expect(ended.out + ended.err).toContain(place);
		expect(ended.out + ended.err).not.toMatch(/\n\s+at /);
	});

	it.each([['layout'], ['check']])('%s names a file that is not there, exit 2', async (command) => {
		const ended = await run([command, join(home, 'none.json')]);
		expect(ended.code).toBe(2);
		expect(ended.out + ended.err).toContain('none.json');
		expect(ended.out + ended.err).not.toMatch(/ENOENT|\n\s+at /);
	});

	it('check takes many files and fails for one', async () => {
		const ended = await run(['check', JOB, badJob, '--json']);
		expect(ended).toMatchObject({ code: 2, err: '' });
		JSON.parse(ended.out);
	});
});

describe('bend --lines', () => {
	it('ends with 3 when its input ends, and the session is kept', async () => {
		const ended = await start(['bend', JOB, '--lines'], { input: 'nonsense\n{"ready":true}\n' });
		expect(ended).toMatchObject({ code: 3, err: '' });
		const lines = ended.out
			.trimEnd()
			.split('\n')
			.map((line) => JSON.parse(line));
		expect(lines[0]).toMatchObject({ note: 'session', resumed: false });
		expect(lines).toContainEqual(expect.objectContaining({ note: 'refused', code: 'not-understood' }));
		expect(lines.at(-1)).toMatchObject({ ask: 'pull', bend: 1 });

		const listed = await start(['log', '--json']);
		expect(listed).toMatchObject({ code: 0, err: '' });
		expect(JSON.parse(listed.out)).toContainEqual(expect.objectContaining({ id: lines[0].id, status: 'open' }));
		const one = await start(['log', lines[0].id, '--json']);
		expect(one).toMatchObject({ code: 0, err: '' });
		expect(JSON.parse(one.out)).toMatchObject({ id: lines[0].id, job: { name: JOB_DATA.name } });

		const resumed = await start(['bend', JOB, '--lines', '--resume']);
		expect(resumed.code).toBe(3);
		// The same question; only its record comes later, since leaving and resuming are records too.
		const { entry, ...question } = JSON.parse(resumed.out.trimEnd().split('\n').at(-1)!);
		expect(question).toEqual({ ...lines.at(-1), entry: undefined });
		expect(entry).toBeGreaterThanOrEqual(lines.at(-1).entry);
	});

	it('with nothing to resume: exit 2', async () => {
		const ended = await start(['bend', JOB, '--lines', '--resume', 'no-such-id']);
		expect(ended.code).toBe(2);
		expect(ended.err).toContain('no-such-id');
		expectSentence(ended);
	});

	it('with a wrong job file: exit 2 before anything is asked', async () => {
		const ended = await start(['bend', badJob, '--lines']);
		expect(ended.code).toBe(2);
		expect(ended.out).toBe('');
		expect(ended.err).toContain('tube.od');
	});
});

describe('log and bender', () => {
	it.each([[['log']], [['bender']]])('%j prints, and with --json one document', async (args) => {
		const empty = join(home, 'empty');
		const asText = await run(args, { home: empty });
		expect(asText.code).toBe(0);
		const asJson = await run([...args, '--json'], { home: empty });
		expect(asJson).toMatchObject({ code: 0, err: '' });
		JSON.parse(asJson.out);
	});

	it('log of an unknown session: exit 2', async () => {
		const ended = await run(['log', 'no-such-id']);
		expect(ended.code).toBe(2);
		expect(ended.err).toContain('no-such-id');
		expectSentence(ended);
	});
});

describe('standard output', () => {
	it('that is closed by its reader is no fault', async () => {
		expect(await start(['help'], { out: 'closed' })).toMatchObject({ code: 0, err: '' });
		expect(await start(['layout', JOB, '--json'], { out: 'closed' })).toMatchObject({ code: 0, err: '' });
	});

	it.skipIf(!existsSync('/dev/full'))('on a full disk ends with 5', async () => {
		const full = openSync('/dev/full', 'w');
		const ended = await start(['layout', JOB, '--json'], { out: full });
		closeSync(full);
		expect(ended.code).toBe(5);
		expect(ended.err).toMatch(/^pullbook: The disk refused a write .+\n$/);
	});
});
