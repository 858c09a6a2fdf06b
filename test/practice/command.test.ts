import { existsSync, mkdtempSync, rmSync } from 'node:fs';
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
