import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { runHere } from '../helpers/disk/run-here.ts';
import type { Line } from '../helpers/shop/contract-client.ts';
import { keepCorners, marks, type PlainTube } from '../helpers/shop/contract-geometry.ts';
import { bendHere, jobOf, Operator, RAIL, Shop } from '../helpers/shop/contract-shop.ts';

const shop = new Shop();
afterAll(() => shop.close());

async function layout(file: string, home: string, ...more: string[]): Promise<Line> {
	const run = await runHere(['layout', file, '--json', ...more], { home });
	expect(run.code).toBe(0);
	return JSON.parse(run.out);
}

/** The job of a tube that was drawn for a die of 6 in, with no growth in it. */
const DRAWN: PlainTube = { ...RAIL, radius: 6 };
const job = (tooling: object = {}, more: object = {}) =>
	jobOf(DRAWN, { clr: 6, die: '6 rail', growth: undefined, ...tooling }, more);

/** The start as the first record of a log has it, after the eight digits of its checksum. */
const startIn = (log: string) => JSON.parse(readFileSync(log, 'utf8').split('\n')[0]!.slice(9)).start;

/** By mechanics alone, as published for a fully plastic tube: k = M R / (E I). Yield and modulus of the table. */
function mechanicsGrowth(): number {
	const [outer, inner] = [DRAWN.od, DRAWN.od - 2 * DRAWN.od * 0.065];
	const moment = (60 * (outer ** 3 - inner ** 3)) / 6;
	return 1 / (1 - (moment * DRAWN.radius) / (29_000 * (Math.PI / 64) * (outer ** 4 - inner ** 4)));
}

describe('the growth that a tube is laid out with', () => {
	it('is by mechanics where nothing was learned, and named with its origin in the first record', async () => {
		const home = shop.home();
		const file = shop.file(job());
		const { growth } = await layout(file, home);
		expect(growth.from).toBe('expected');
		expect(growth.value).toBeCloseTo(mechanicsGrowth(), 12);
		const talk = await bendHere(file, home);
		const start = startIn(talk.lines[0]!.log);
		expect(start).toMatchObject({ corners: 'held', growth: growth.value, growthFrom: 'expected' });
		await talk.end();
	});

	it('is the die’s where one is kept, and the job’s before that', async () => {
		const home = shop.home();
		const set = ['bender', 'shop', '--die', '6 rail', '--clr', '6', '--growth', '1.03'];
		expect((await runHere(set, { home })).code).toBe(0);
		const file = shop.file(job());
		const kept = await layout(file, home);
		expect(kept.growth).toEqual({ value: 1.03, from: 'die' });
		const { rows, cut } = marks(keepCorners(DRAWN, 6.18));
		expect(kept.cutLength).toBeCloseTo(cut, 9);
		for (const [i, row] of rows.entries()) expect(kept.bends[i].mark.fromStart).toBeCloseTo(row.fromStart, 9);
		const talk = await bendHere(file, home, '--no-learn');
		expect(talk.ask.mark).toMatchObject({ ...kept.bends[0].mark, moved: 0 });
		expect(startIn(talk.lines[0]!.log)).toMatchObject({ growth: 1.03, growthFrom: 'die' });
		await talk.end();
		const own = await layout(shop.file(job({ growth: 1.01 })), home);
		expect(own.growth).toEqual({ value: 1.01, from: 'job' });
	});

	it('is what this die and tube have shown, in layout and session alike; without learning it is not', async () => {
		const home = shop.home();
		const file = shop.file(job());
		const first = await bendHere(file, home);
		await new Operator().play(first);
		expect(await first.end()).toBe(0);
		const learned = await layout(file, home);
		expect(learned.growth.from).toBe('expected');
		// This bender springs back by 3.5 % of the angle on the dial and 1.2 degrees.
		expect(learned.growth.value).toBeGreaterThan(1 / (1 - 0.02));
		expect(learned.growth.value).toBeLessThan(1 / (1 - 0.06));
		const cold = await layout(file, home, '--no-learn');
		expect(cold.growth.value).toBeCloseTo(mechanicsGrowth(), 12);
		expect(cold.growth.value).not.toBe(learned.growth.value);
		for (const [document, more] of [
			[learned, []],
			[cold, ['--no-learn']],
		] as const) {
			const talk = await bendHere(file, home, ...more);
			expect(talk.ask.mark).toMatchObject({ ...document.bends[0].mark, moved: 0 });
			await talk.end();
		}
		// Another die has shown nothing of this tube.
		const other = await layout(shop.file(job({ die: '6 other' })), home);
		expect(other.growth.value).toBeCloseTo(mechanicsGrowth(), 12);
	});

	it('is piece 1’s for every piece of a batch, which is told how far marks would move, until the job changes', async () => {
		const home = shop.home();
		// The marks of this tube move by a thirty-second: a finer tape shows it.
		const fine = { tape: 1 / 64 };
		const file = shop.file(job(fine, { quantity: 3 }));
		const cut = async () => JSON.parse((await runHere(['cut', file, '--stock', '240', '--json'], { home })).out);
		const [before, sawn] = [await layout(file, home), (await cut()).tubes[0].pieces[0].cutLength];
		const first = await bendHere(file, home);
		expect(first.lines[0]).not.toHaveProperty('alike');
		await new Operator().play(first);
		await first.end();
		const [after, learned] = [
			await layout(file, home),
			await layout(shop.file(job(fine, { name: 'One of it' })), home),
		];
		const only = ({ growth, cutLength, bends }: Line) => ({ growth, cutLength, bends });
		expect(only(after)).toEqual(only(before));
		expect((await cut()).tubes[0].pieces[0].cutLength).toBe(sawn);
		const moves = learned.bends.map(({ mark }: Line, i: number) =>
			Math.abs(mark.fromStart - before.bends[i].mark.fromStart),
		);
		const second = await bendHere(file, home);
		expect(second.ask.mark).toMatchObject({ ...before.bends[0].mark, moved: 0 });
		const most = Math.max(...moves, Math.abs(learned.cutLength - before.cutLength));
		expect(second.lines[0]).toMatchObject({ piece: 2, alike: true });
		expect(second.lines[0]!.wouldMove).toBeCloseTo(most, 9);
		await new Operator().play(second);
		await second.end();
		const written = JSON.parse(readFileSync(file, 'utf8'));
		writeFileSync(file, JSON.stringify({ ...written, tooling: { ...written.tooling, growth: 1.03 } }));
		const third = await bendHere(file, home);
		expect(third.lines[0]).toMatchObject({ piece: 3, alike: false });
		expect(third.lines[0]).not.toHaveProperty('wouldMove');
		await third.end();
	});

	it('is the same from the far end, and for the other hand', async () => {
		const home = shop.home();
		const file = shop.file(job({ growth: 1.05 }));
		const [drawn, far] = [await layout(file, home), await layout(file, home, '--from', 'far', '--mirror')];
		const talk = await bendHere(file, home, '--from', 'far', '--mirror', '--no-learn');
		expect(talk.ask.mark).toMatchObject({ ...far.bends[0].mark, moved: 0 });
		await talk.end();
		expect(far.cutLength).toBeCloseTo(drawn.cutLength, 9);
		// Both trims are 1 in: a bend begins there where, from the start end, it ends.
		for (const [i, bent] of far.bends.toReversed().entries()) {
			const end = drawn.bends[i].mark.fromStart + drawn.bends[i].arc;
			expect(bent.mark.fromStart).toBeCloseTo(drawn.cutLength - end, 9);
		}
	});
});

describe('corners too near for the radius', () => {
	// Next to nothing between bends 2 and 3: room for the die's own radius, not for 1.5 % more.
	const near = DRAWN.bends.map((one, i) => (i === 2 ? { ...one, straight: 0.02, rotation: 0 } : one));
	const shape = { bends: near, last: 10 };

	it('are warned of where the growth is expected; the marks are then the die’s', async () => {
		const home = shop.home();
		const file = shop.file(job({}, { shape }));
		const document = await layout(file, home);
		expect(document.growth).toEqual({ value: 1, from: 'expected' });
		const [warning] = document.warnings;
		expect(warning).toMatchObject({ at: 'shape.bends[2].straight', code: 'no-room' });
		expect(warning.text).toMatch(/^Bends 2 and 3: the drawing leaves no room between their corners/);
		expect(document.bends[2].straight).toBeCloseTo(0.02, 12);
		const talk = await bendHere(file, home, '--no-learn');
		expect(talk.lines[1]).toMatchObject({ note: 'warnings', warnings: [{ code: 'no-room' }] });
		expect(talk.ask.mark).toMatchObject({ ...document.bends[0].mark, moved: 0 });
		await talk.end();
		// Begun at the far end the place is still the file's.
		const far = await layout(file, home, '--from', 'far');
		expect(far.warnings[0]).toMatchObject({ at: 'shape.bends[2].straight', code: 'no-room' });
		expect(far.warnings[0].text).toMatch(/^Bends 1 and 2:/);
	});

	it.each([
		['bends', shape, 'shape.bends[2].straight'],
		[
			'points',
			{
				points: [
					[0, 0],
					[20, 0],
					[20, 12.1],
					[40, 12.1],
				],
			},
			'shape.points[2]',
		],
	])('are a fault where the growth is stated, by %s', async (_, given, at) => {
		const home = shop.home();
		const file = shop.file(job({ growth: 1.02 }, { shape: given }));
		const run = await runHere(['check', file, '--json'], { home });
		expect(run.code).toBe(2);
		const [fault, ...others] = JSON.parse(run.out).files[0].faults;
		expect(others).toEqual([]);
		expect(fault.at).toBe(at);
		expect(fault.right).toMatch(at === 'shape.points[2]' ? /bends 1 and 2 need/ : /bends 2 and 3 need/);
		expect((await runHere(['check', shop.file(job({}, { shape: given }))], { home })).code).toBe(0);
	});
});
