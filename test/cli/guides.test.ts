import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { COMMANDS } from '../../src/cli/commands.ts';
import { SMALLEST } from '../../src/screen/shell/frame.ts';
import { TOPIC_NAMES } from '../../src/words/topics/topic-names.ts';
import { PROGRAM, runProgram } from '../helpers/disk/program.ts';
import { Pty } from '../helpers/screen/pty.ts';
import { blocksOf, blockUnder, type Deed, guide, stepsOf, WRITING, writeUnder } from '../helpers/sources/guides.ts';

const home = mkdtempSync(join(tmpdir(), 'guides-'));
afterAll(() => rmSync(home, { recursive: true }));

const GUIDES = ['README.md', 'DEVELOPERS.md', 'jobs/README.md'];
const readme = guide('README.md');

describe('the README', () => {
	it('is short, and so is the guide for developers', () => {
		expect(readme.split('\n').length).toBeLessThanOrEqual(161);
		expect(guide('DEVELOPERS.md').split('\n').length).toBeLessThanOrEqual(151);
	});

	it('has the commands to install, start and test it as they are written', () => {
		const blocks = blocksOf(readme).map((block) => block.trim());
		expect(blocks).toEqual(expect.arrayContaining(['npm ci && npm start', 'npm install -g .', 'npm ci && npm test']));
	});

	it('asks for the Node and the window that the program asks for', () => {
		const { engines } = JSON.parse(guide('package.json')) as { engines: { node: string } };
		expect(readme).toContain(`Node ${/\d+/.exec(engines.node)} or later`);
		expect(readme).toContain(`${SMALLEST.columns} columns by ${SMALLEST.rows} rows`);
	});

	it('names every command and every topic of help', () => {
		for (const name of Object.keys(COMMANDS)) expect(readme).toContain(`\`pullbook ${name}`);
		for (const name of Object.keys(TOPIC_NAMES)) expect(readme).toContain(`\`pullbook help ${name}\``);
	});

	it('leads through a first tube: what it presses is taken, what it says is shown', { timeout: 60_000 }, async () => {
		const steps = stepsOf(readme.slice(readme.indexOf('## A first tube')));
		expect(steps).toHaveLength(10);
		const pty = new Pty(process.execPath, [PROGRAM, '--home', home], { columns: 80, rows: 24 });
		const wanted = Number(/<!-- screen: step (\d+) -->/.exec(readme)?.[1]);
		for (const [at, step] of steps.entries()) {
			for (const [i, deed] of step.entries()) {
				await done(pty, deed);
				if (at + 1 === wanted && i === 0) await showsAsKept(pty, `screen: step ${wanted}`);
			}
		}
		pty.write('\x03');
		await pty.ended;
	});
});

const KEYS: Record<string, string> = { Enter: '\r' };

async function done(pty: Pty, deed: Deed): Promise<void> {
	if ('see' in deed) await pty.until(deed.see);
	else if (deed.press !== 'pullbook') {
		const title = pty.lines[0];
		pty.write(KEYS[deed.press] ?? deed.press);
		// It goes on wherever it has a meaning, and there only.
		if (deed.press === '+') await pty.until(() => pty.lines[0] !== title);
	}
}

/** How long a screen must stand still to be written down, and how long one that is wanted may take. */
const STILL_MS = 250;
const LATE_MS = 3000;

async function showsAsKept(pty: Pty, mark: string): Promise<void> {
	const kept = blockUnder('README.md', mark).trimEnd();
	await pty.until((text) => !WRITING && text === kept, WRITING ? STILL_MS : LATE_MS).catch(() => undefined);
	if (WRITING) writeUnder('README.md', mark, `${pty.text}\n`);
	else expect(pty.text).toBe(kept);
}

describe.each(GUIDES)('%s', (name) => {
	const text = guide(name);

	it('writes only command lines that are understood', () => {
		const written = text.replace(/^```\n\$ [\s\S]*?^```$/gm, '');
		const lines = [...written.matchAll(/(?:`|^(?:\$ )?)(?:pullbook|npm start --) ([^`\n]+)/gm)].map(
			([, line]) => line!,
		);
		for (const line of lines) expect(() => readCommandLine(line.split(' ')), line).not.toThrow();
	});

	it('shows what a command prints as it prints it', async () => {
		for (const block of blocksOf(text).filter((each) => each.startsWith('$ pullbook '))) {
			const [command = ''] = block.split('\n');
			const { out } = await runProgram(command.split(' ').slice(2), { home });
			if (WRITING) writeUnder(name, command.slice(2), `${command}\n${out}`);
			else expect(block).toBe(`${command}\n${out}`);
		}
	});
});
