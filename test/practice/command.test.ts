import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { root } from '../helpers/disk/program.ts';
import { runHere } from '../helpers/disk/run-here.ts';

const home = mkdtempSync(join(tmpdir(), 'practice-command-'));
afterAll(() => rmSync(home, { recursive: true }));
const practice = (...args: string[]) => runHere(['practice', `${root}jobs/handrail-knee.json`, ...args], { home });

describe('pullbook practice', () => {
	it('plays a session in a pipe, with the seed, each ask and answer, and the end', async () => {
		const { code, out, err } = await practice('--auto', '--seed', '5');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out).toContain('seed 5');
		expect(out).toMatch(/set: mark at 15 5\/8 in from the start end, no turn/);
		expect(out).toMatch(/pull: stop at [\d.]+°, ease up from [\d.]+°/);
		expect(out).toMatch(/bend +drawing +target +believed +give or take +truly +pulls +set-ups/);
		expect(existsSync(join(home, 'practice', 'sessions'))).toBe(true);
		expect(existsSync(join(home, 'sessions'))).toBe(false);
	});

	it('tells checks with their unit, as finely as the session itself does, and corrects nothing after the last bend', async () => {
		const { out } = await runHere(['practice', `${root}jobs/bow-rail.json`, '--auto', '--seed', '7'], { home });
		expect(out).toContain('drawing 6 43/64 in\n');
		expect(out).toMatch(/^ {2}check crown: [\d /]+ in$/m);
		expect(out.match(/^ {2}corrected: /gm)).toHaveLength(2);
	});

	it('prints one document, the same for the same seed', async () => {
		const [first, again] = await Promise.all([
			practice('--auto', '--json', '--seed', '5'),
			practice('--auto', '--json', '--seed', '5'),
		]);
		const document = JSON.parse(first.out);
		expect(document).toMatchObject({ seed: 5, job: 'Slipway handrail knee', done: { note: 'done' } });
		expect(document.steps[0]).toMatchObject({ ask: { ask: 'set' }, action: { do: 'ready' } });
		expect(JSON.parse(again.out).steps).toEqual(document.steps);
	});

	it('bends a batch by itself: every piece on the one bender, the next with what the ones before taught, and sums it up', async () => {
		const batch = join(home, 'knees.json');
		const knee = JSON.parse(readFileSync(`${root}jobs/handrail-knee.json`, 'utf8'));
		writeFileSync(batch, JSON.stringify({ ...knee, quantity: 3 }));
		const run = (...args: string[]) => runHere(['practice', batch, '--auto', '--seed', '5', ...args], { home });
		const { out } = await run('--json');
		const { further, ...first } = JSON.parse(out);
		const tubes = [first, ...further];
		expect(tubes.map(({ piece }) => piece)).toEqual([1, 2, 3]);
		expect(new Set(tubes.map(({ trueAngles }) => String(trueAngles))).size).toBe(3);
		expect(tubes.map(({ done }) => done.note)).toEqual(['done', 'done', 'done']);
		const known = tubes.map(
			({ steps }) => steps.find((step: { ask: { ask: string } }) => step.ask.ask === 'pull').ask.why,
		);
		expect(known[0]).not.toContain('tube like this');
		expect(known[1]).toContain('one tube like this');
		expect(known[2]).toContain('2 tubes like this');
		const { out: text } = await run();
		expect(text.match(/^Piece \d of 3$/gm)).toEqual(['Piece 1 of 3', 'Piece 2 of 3', 'Piece 3 of 3']);
		expect(text).toContain('The batch: 3 of 3 made.');
	});

	it.each([
		[[], '--auto'],
		[['--json'], '--auto --json'],
		[['--auto', '--seed', 'x'], 'whole number'],
	])('%j is refused with exit code 2 and what would be right', async (args, text) => {
		const { code, out, err } = await practice(...args);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(err).toContain(text);
	});
});
