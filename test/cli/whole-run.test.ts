import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ask } from '../../src/session/ask.ts';
import { status } from '../../src/session/report/views.ts';
import { runProgram, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { sample } from '../helpers/sample-size.ts';
import type { Pty } from '../helpers/screen/pty.ts';
import { Sitting } from '../helpers/screen/sitting.ts';

// As a person types it: from the project's folder.
const [JOB, ONE_BEND] = ['bow-rail', 'handrail-knee'].map((name) =>
	relative(process.cwd(), SAMPLE_JOBS.find((path) => path.includes(name))!),
) as [string, string];
let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'whole-'));
});
afterAll(() => rmSync(home, { recursive: true }));

/** In every run of the tests the smallest window; at 80x24 the jobs below are bent. */
const SIZES = [
	[60, 20],
	[80, 24],
] as const;

describe.each(SIZES.slice(0, sample(1, SIZES.length)))(
	'a whole job at %i x %i, by numeric pad alone',
	(columns, rows) => {
		it('is bent, killed in the middle, resumed, finished and reviewed', { timeout: 120_000 }, async () => {
			const sitting = new Sitting(join(home, `${columns}`));
			const first = sitting.start(columns, rows, ['bend', JOB]);
			await sitting.open(first);
			await sitting.play(first, (open) => open.ask === 'pull' && open.bend === 2);
			const open = ask(sitting.state());
			first.kill('SIGKILL');
			await first.ended;

			const offered = sitting.start(columns, rows, ['bend', JOB]);
			await offered.until(/interrupted|go on/);
			offered.write('\x03');
			await offered.ended;
			const second = sitting.start(columns, rows, ['bend', JOB, '--resume']);
			await second.until('Session goes on');
			second.write('+');
			await second.until(/^Pull/);
			expect({ ...ask(sitting.state()), entry: 0 }).toEqual({ ...open, entry: 0 });
			await sitting.play(second, () => false);
			await second.until(/^Done/);
			second.write('+');
			expect(status(sitting.state())).toBe('done');
			second.write('\x03');
			await second.ended;

			const review = await runProgram(['log'], { home: sitting.folder });
			expect(review.out).toContain('3 of 3 bends');
			expect(sitting.typed).toMatch(/^[\d.+*/\n-]+$/);
		});
	},
);

describe('Ctrl-C', () => {
	it('is heard before all keys that wait for their turn: nothing of them is done', { timeout: 120_000 }, async () => {
		const sitting = new Sitting(join(home, 'interrupted'));
		const pty = sitting.start(80, 24, ['bend', JOB]);
		await pty.until('New session');
		// Each + would go on a page and, from the third, set the tube and be kept.
		pty.write(`${'+'.repeat(400)}\x03`);
		expect(await pty.ended).toMatchObject({ exitCode: 130 });
		expect(sitting.state().entries).toEqual([]);
	});
});

describe('a whole job', () => {
	it('is bent by an instrument that types a byte every millisecond', { timeout: 120_000 }, async () => {
		const sitting = new Sitting(join(home, 'fast'), { gap: 1 });
		const pty = sitting.start(80, 24, ['bend', ONE_BEND]);
		await sitting.open(pty);
		await sitting.play(pty, () => false);
		await pty.until(/^Done/);
		expect(status(sitting.state())).toBe('done');
		expect(sitting.typed).toMatch(/^[\d.+*/\n-]+$/);
		await sitting.press(pty, '+');
		expect(await pty.ended).toEqual({ exitCode: 0, signal: 0 });
	});

	it('is bent in a window that changes at every question, and left by Ctrl-C says how to go on', {
		timeout: 120_000,
	}, async () => {
		const sizes = [
			[160, 50],
			[60, 20],
			[100, 30],
			[80, 24],
		] as const;
		let asked = 0;
		const before = async (pty: Pty) => {
			const [columns, rows] = sizes[asked++ % sizes.length]!;
			// By way of a window that is too small for any question.
			pty.resize({ columns: 33, rows: 10 });
			await pty.until(/needed/);
			pty.resize({ columns, rows });
			await pty.until(/\n(>| \+ )/);
		};
		const sitting = new Sitting(join(home, 'sized'), { before });
		const first = sitting.start(80, 24, ['bend', JOB]);
		await sitting.open(first);
		await sitting.play(first, (open) => open.ask === 'measure');
		first.write('\x03');
		expect(await first.ended).toEqual({ exitCode: 130, signal: 0 });
		// What is said last may come after the end of the program.
		await first.until('The session is kept');
		expect(first.alternate).toBe(false);
		const [, id = ''] = /The session is kept: .*\/([\w-]+)\.log/.exec(first.text.replace(/\n/g, '')) ?? [];
		// Broken at the right edge of the window.
		expect(first.text.replace(/\s/g, '')).toContain(`Togoonwithit:pullbookbend${JOB}--resume${id}`);

		const second = sitting.start(80, 24, ['bend', JOB, '--resume', id]);
		await second.until('Session goes on');
		await sitting.press(second, '+');
		await second.until(/^Measure/);
		await sitting.play(second, () => false);
		second.resize({ columns: 80, rows: 24 });
		await second.until(/^Done/);
		expect(asked).toBeGreaterThan(15);
		expect(status(sitting.state())).toBe('done');
		second.write('+');
		await second.ended;
	});
});

describe('the first frame', () => {
	it('is drawn once, though Ink takes over after it', { timeout: 60_000 }, async () => {
		const pty = new Sitting(join(home, 'once')).start(80, 24, []);
		await pty.until('Bow rail');
		pty.write('99');
		await pty.until('> 99');
		pty.write('\x7f\x7f');
		await pty.until(/^>$/m);
		expect(pty.raw.match(/Bow rail/g)).toHaveLength(1);
		expect(pty.raw.match(/Guides you through bending/g)).toHaveLength(1);
		pty.write('\x03');
		expect(await pty.ended).toEqual({ exitCode: 130, signal: 0 });
	});
});
