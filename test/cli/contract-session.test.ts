import { afterAll, describe, expect, it } from 'vitest';
import { documentFaults } from '../helpers/cli/documents.ts';
import { runHere } from '../helpers/disk/run-here.ts';
import type { Line, Talk } from '../helpers/shop/contract-client.ts';
import { endMiss, keepCorners, marks, type PlainTube, walk } from '../helpers/shop/contract-geometry.ts';
import { bend, bendHere, Operator, question, RAIL, railJob, Shop } from '../helpers/shop/contract-shop.ts';

const shop = new Shop();
const home = shop.home();
afterAll(() => shop.close());

const checks = [
	{ name: 'mid', ovality: { bend: 1 } },
	{ name: 'drop', drop: { from: 1, to: { straight: 3 } } },
	{ name: 'long', span: { from: { bend: 1 }, to: { bend: 3 } } },
];

async function review(id: string): Promise<Line> {
	const run = await runHere(['log', id, '--json'], { home });
	expect(run.code).toBe(0);
	const document = JSON.parse(run.out);
	expect(documentFaults('log', document)).toEqual([]);
	return document;
}
async function rail(more: object = {}, tooling: object = {}): Promise<Talk> {
	// What one test's bender taught is no matter of the next.
	return bendHere(shop.file(railJob(more, tooling)), home, '--no-learn');
}
const atSet = (number: number) => (ask: Line) => ask.ask === 'set' && ask.bend === number;

describe('a whole session from set to done', () => {
	it('asks in the stated order, numbers its records without gaps and ends with what was made', async () => {
		// Wide enough that hands which told no turn leave it likely to fit.
		const talk = await rail({ checks, tolerance: { shape: 0.4, direction: 2 } });
		const [session, first] = talk.lines as [Line, Line];
		expect(Object.keys(session)).toEqual(['note', 'id', 'log', 'resumed', 'job', 'changed', 'others']);
		expect(session).toMatchObject({ note: 'session', resumed: false, job: 'Skerry Row rail', changed: [] });
		const [row] = marks(RAIL).rows;
		expect(first).toMatchObject({ ask: 'set', entry: 1, bend: 1, bends: 3, target: 40, design: 40, seat: 1 });
		expect(first).toMatchObject({ rotation: 0, pointer: 0, plan: 'new', was: { target: 40, rotation: 0 } });
		expect(first.mark.fromStart).toBeCloseTo(row?.fromStart ?? 0, 9);
		expect(first.mark.fromFarEnd).toBeCloseTo(row?.fromFarEnd ?? 0, 9);
		expect(first.mark).toMatchObject({ fromLastBend: null, tape: '13', moved: 0 });

		const operator = new Operator();
		await operator.play(talk);
		expect(await talk.end()).toBe(0);
		const asks = talk.lines.filter((line) => 'ask' in line);
		expect(asks.map((ask) => ask.entry)).toEqual(asks.map((_, i) => i + 1));
		const due = asks.filter((ask) => ask.ask === 'check').map((ask) => ask.name);
		expect(due).toEqual(['mid', 'drop', 'long']);
		for (const ask of asks.filter((line) => line.ask === 'pull')) {
			expect(ask.stop % 0.5).toBe(0);
			expect(ask.stop).toBeLessThanOrEqual(180);
			expect(ask.limit).toBe(false);
		}
		for (const [i, ask] of asks.entries()) {
			const next = asks[i + 1];
			if (ask.ask === 'set') expect(next?.ask).toBe('pull');
			if (ask.ask === 'decide' && ask.advice === 'pull') expect(next).toMatchObject({ ask: 'set', bend: ask.bend });
		}

		const done = talk.lines.at(-1) as Line;
		expect(done).toMatchObject({ note: 'done', scrapped: false, fits: true, log: session.log });
		expect(done.sd.endOffset).toBeGreaterThan(0);
		expect(done.sd.endAngle).toBeGreaterThan(0);
		expect(done.chance).toBeGreaterThanOrEqual(0.8);
		expect(done.chance).toBeLessThanOrEqual(1);
		expect(done).toHaveProperty('tellsMost');
		const log = await review(session.id);
		expect(log).toMatchObject({ id: session.id, status: 'done', notes: [] });
		const keys = ['id', 'job', 'status', 'started', 'ended', 'bends', 'checks', 'asBuilt', 'notes', 'events'];
		expect(Object.keys(log)).toEqual(keys);
		for (const [i, made] of done.bends.entries()) {
			expect(log.bends[i].made).toEqual({ angle: made.made, sd: made.sd });
			expect(log.bends[i].pulls).toHaveLength(made.pulls);
			expect(log.bends[i].pulls.at(-1).seat).toBe(made.seats);
			expect(log.bends[i].target).toBe(made.target);
			// One that takes many pulls is taken though it may be a hair short.
			expect(Math.abs(made.made - made.target)).toBeLessThanOrEqual(made.pulls > 3 ? 0.6 : 0.5);
		}
		const asBuilt = builtFrom(log);
		const miss = endMiss(asBuilt, RAIL);
		expect(done.endOffset).toBeCloseTo(miss.offset, 8);
		expect(done.endAngle).toBeCloseTo(miss.angle, 6);
		expect([log.asBuilt.endOffset, log.asBuilt.endAngle]).toEqual([done.endOffset, done.endAngle]);
		expect(log.asBuilt).toMatchObject({ sd: done.sd, chance: done.chance, fits: true });
		const made = walk(asBuilt).corners.slice(1, -1);
		const off = made.map((corner, i) => Math.hypot(...corner.map((x, k) => x - (walk(RAIL).corners[i + 1]?.[k] ?? 0))));
		expect(done.shape.off).toBeCloseTo(Math.max(...off), 6);
		expect(off[done.shape.bend - 1]).toBeCloseTo(done.shape.off, 6);
		const wide = done.bends.flatMap((made: Line, i: number) =>
			Math.abs(made.made - made.design) > 0.5 ? [i + 1] : [],
		);
		expect(done.outside).toEqual(wide);
		expect(done.trim.start).toBe(1);
		expect(done.trim.end).toBeCloseTo(marks(RAIL).cut - 1 - marks(asBuilt).developed, 8);
	});

	it('`corrected` after each accept: old and new beside each other, and what came of the drawing’s numbers', async () => {
		const talk = await rail({ checks });
		await new Operator().play(talk, atSet(2));
		const corrected = talk.lines.at(-2) as Line;
		expect(corrected).toMatchObject({ note: 'corrected', after: { bend: 1 } });
		expect(corrected.remaining.map((left: Line) => left.bend)).toEqual([2, 3]);
		const { rows } = marks(RAIL);
		for (const left of corrected.remaining) {
			expect(left.was.fromStart).toBeCloseTo(rows[left.bend - 1]?.fromStart ?? 0, 9);
			expect(left.was).toMatchObject(pick(RAIL.bends[left.bend - 1], 'angle', 'rotation'));
		}
		expect(corrected.predicted.checks.map((check: Line) => check.name)).toEqual(['mid', 'drop', 'long']);
		expect(corrected.predicted.endOffset).toBeLessThan(corrected.without.endOffset);
		for (const foretold of [corrected.predicted, corrected.without]) {
			expect(Object.keys(foretold)).toEqual(['endOffset', 'endAngle', 'shape', 'sd', 'checks', 'chance']);
			for (const { sd } of foretold.checks) expect(sd).toBeGreaterThan(0);
			for (const key of ['endOffset', 'endAngle']) expect(foretold.sd[key]).toBeGreaterThan(0);
			expect(foretold.chance).toBeGreaterThanOrEqual(0);
			expect(foretold.chance).toBeLessThanOrEqual(1);
		}
		const next = corrected.remaining[0];
		expect(talk.ask).toMatchObject({ target: next.angle, rotation: next.rotation, design: 55, plan: 'new' });
		expect(talk.ask.was).toMatchObject({ target: 55, rotation: 180 });
		expect(talk.ask.mark.fromStart).toBe(next.fromStart);
		expect(talk.ask.mark.moved).toBeCloseTo(next.fromStart - (rows[1]?.fromStart ?? 0), 9);

		const [old] = await talk.send({ plan: 'old' });
		expect(old).toMatchObject({ ask: 'set', plan: 'old', target: 55, rotation: 180 });
		expect(old?.mark.fromStart).toBeCloseTo(rows[1]?.fromStart ?? 0, 9);
		const [again] = await talk.send({ plan: 'new' });
		expect(again?.mark.fromStart).toBe(next.fromStart);
		await talk.end();
	});

	it('growth absent: the marks of the expected radius at once, the corners kept, as `layout` has them', async () => {
		const file = shop.file(railJob({ checks }, { growth: undefined }));
		const printed = await runHere(['layout', file, '--json', '--no-learn'], { home });
		const document = JSON.parse(printed.out);
		const talk = await bendHere(file, home, '--no-learn');
		const [, first] = talk.lines as [Line, Line];
		expect(first.ask).toBe('set');
		expect(document.growth.from).toBe('expected');
		expect(document.growth.value).toBeGreaterThan(1);
		const grown = keepCorners(RAIL, 6 * document.growth.value);
		for (const [i, corner] of walk(grown).corners.flat().entries())
			expect(corner).toBeCloseTo(walk(RAIL).corners.flat()[i] ?? Number.NaN, 9);
		const { rows, cut } = marks(grown);
		expect(document.cutLength).toBeCloseTo(cut, 9);
		for (const [i, row] of rows.entries()) expect(document.bends[i].mark.fromStart).toBeCloseTo(row.fromStart, 9);
		expect(first.mark).toMatchObject({ ...document.bends[0].mark, moved: 0 });
		expect(first.was.fromStart).toBe(first.mark.fromStart);
		await talk.end();
	});
});

function pick(from: object | undefined, ...keys: string[]): object {
	return Object.fromEntries(Object.entries(from ?? {}).filter(([key]) => keys.includes(key)));
}
function builtFrom(log: Line): PlainTube {
	const straights: number[] = log.asBuilt.straights;
	return {
		...RAIL,
		bends: log.asBuilt.bends.map((made: Line, i: number) => ({ ...made, straight: straights[i] })),
		last: straights.at(-1) ?? 0,
	};
}
describe('answers', () => {
	it('refuses what it cannot take, keeps nothing and asks the same again', async () => {
		const talk = await rail();
		const open = talk.ask;
		const bad: [string, string][] = [
			['nonsense', 'not-understood'],
			['[]', 'not-understood'],
			['{}', 'not-understood'],
			['{"ready":true,"undo":true}', 'not-understood'],
			['{"ready":true,"length":"abc"}', 'not-understood'],
			['{"loaded":40}', 'not-possible'],
			['{"undo":true}', 'not-possible'],
			['{"plan":"old"}', 'not-possible'],
			['{"amend":{"entry":7,"reading":3}}', 'not-possible'],
			['{"reopen":{"bend":1,"do":"pull"}}', 'not-possible'],
			['{"evidence":{"kind":"mark","bend":2,"reading":30}}', 'not-possible'],
		];
		for (const [answer, code] of bad) {
			const [refused, ask] = await talk.send(answer);
			expect([answer, refused?.note, refused?.code]).toEqual([answer, 'refused', code]);
			expect(ask).toEqual(open);
		}
		await talk.end();
	});

	it('takes numbers as a person writes them', async () => {
		const talk = await rail();
		await talk.send({ ready: true, mark: '13 1/32', length: '5\' 4 1/4"', rotation: '0.5' });
		expect(talk.ask.ask).toBe('pull');
		await talk.send({ loaded: '42 1/2', released: '39.9' });
		expect(talk.ask.ask).toBe('measure');
		await talk.send({ angles: ['39.7', '39 3/4'] });
		expect(talk.ask.ask).toBe('decide');
		await talk.send({ do: 'accept' });
		expect(talk.ask.mark.fromStart + talk.ask.mark.fromFarEnd).toBeCloseTo(64.25, 9);
		const log = await review(talk.lines[0]?.id);
		expect(log.bends[0].pulls[0]).toMatchObject({ seat: 1, loaded: 42.5, released: 39.9, measured: [39.7, 39.75] });
		await talk.end();
	});

	it('doubts pointer, mark, rotation and length of one answer in that order, each once', async () => {
		const talk = await rail();
		await talk.send({ ready: true, length: 70, rotation: 25, mark: 16, pointer: 9 });
		for (const of of ['pointer', 'mark', 'rotation', 'length']) {
			expect(talk.ask).toMatchObject({ ask: 'confirm', of, bend: 1 });
			await talk.send({ keep: true });
		}
		expect(talk.ask.ask).toBe('pull');
		await talk.end();
	});

	it('wants two readings of the first bend, and doubts two that differ by over a degree', async () => {
		const talk = await rail();
		await talk.send({ ready: true });
		const { stop } = talk.ask;
		await talk.send({ loaded: 60 });
		expect(talk.ask).toMatchObject({ ask: 'confirm', of: 'loaded', reading: 60, expect: { value: stop } });
		await talk.send({ reading: stop });
		expect(talk.ask).toMatchObject({ ask: 'measure', readings: 2 });
		await talk.send({ angle: 37 });
		expect(talk.ask).toMatchObject({ ask: 'measure', readings: 1 });
		await talk.send({ angle: 38.5 });
		expect(talk.ask).toMatchObject({ ask: 'confirm', of: 'angle', reading: 38.5 });
		await talk.send({ reading: 37.1 });
		expect(talk.ask.ask).toBe('decide');
		expect(talk.ask.why).toContain('38.5');
		expect(talk.ask.made.angle).toBeCloseTo(37.05, 0);
		await talk.end();
	});

	it('notes ride or stand alone, and undo passes them by', async () => {
		const talk = await rail();
		const open = talk.ask;
		await talk.send({ note: 'alone' });
		expect(question(talk.ask)).toEqual(question(open));
		await talk.send({ ready: true, note: 'riding' });
		await talk.send({ note: 'after' });
		await talk.send({ undo: true });
		expect(question(talk.ask)).toEqual(question(open));
		expect((await review(talk.lines[0]?.id)).notes).toEqual(['alone', 'riding', 'after']);
		await talk.end();
	});

	it('a tube taken out of the die at `pull` is set again, in the next seat', async () => {
		const talk = await rail();
		await talk.send({ ready: true });
		await talk.send({ reseat: true });
		expect(talk.ask).toMatchObject({ ask: 'set', seat: 2, tubeTurn: { degrees: 0, way: 'none' } });
		await talk.send({ ready: true });
		expect(talk.ask).toMatchObject({ ask: 'pull', bend: 1, pull: 1 });
		await talk.end();
	});

	it('evidence moves what is left; amending a reading changes what was made', async () => {
		const talk = await rail();
		const operator = new Operator();
		await operator.play(talk, (ask) => ask.ask === 'measure');
		const angle = operator.made.get(1) ?? 0;
		await talk.send({ angle });
		const entry = talk.ask.entry;
		await talk.send({ angle });
		await talk.send({ do: 'accept' });
		const mark = talk.ask.mark.fromStart;
		const [corrected] = await talk.send({ evidence: { kind: 'mark', bend: 1, reading: '13 1/32' } });
		expect(corrected).toMatchObject({ note: 'corrected' });
		expect(talk.ask).toMatchObject({ ask: 'set', bend: 2 });
		// The whole tube slides along itself: the marks left go with bend 1, as finely as the tape is divided.
		const moved = talk.ask.mark.fromStart - mark;
		expect(Math.abs(moved - 1 / 32)).toBeLessThanOrEqual(1 / 16);
		expect((talk.ask.mark.fromStart * 16) % 1).toBeCloseTo(0, 9);
		await talk.send({ undo: true });
		const before = (await review(talk.lines[0]?.id)).bends[0].made.angle;
		const [other] = await talk.send({ amend: { entry, reading: angle + 0.4 } });
		expect(other?.note).toBe('corrected');
		const after = (await review(talk.lines[0]?.id)).bends[0];
		expect(after.made.angle).toBeGreaterThan(before);
		expect(after.pulls[0].measured).toEqual([angle, angle + 0.4]);
		await talk.end();
	});
});

describe('what stands in the way', () => {
	it('the dial’s end: `stop` never beyond it, a fresh seat for one more pull, then no more', async () => {
		const talk = await rail({}, { maxAngle: 41 });
		expect(talk.lines[1]).toMatchObject({ note: 'warnings' });
		await talk.send({ ready: true });
		expect(talk.ask).toMatchObject({ ask: 'pull', stop: 41, limit: true });
		await talk.send({ loaded: 41 });
		await talk.send({ angles: [38.3, 38.3] });
		expect(talk.ask).toMatchObject({ ask: 'decide', limit: true });
		await talk.send({ do: 'pull' });
		expect(talk.ask).toMatchObject({ ask: 'set', seat: 2 });
		await talk.send({ ready: true });
		await talk.send({ loaded: 41 });
		await talk.send({ angle: 38.35 });
		const open = talk.ask;
		expect(open).toMatchObject({ ask: 'decide', limit: true });
		const [refused] = await talk.send({ do: 'pull' });
		expect(refused).toMatchObject({ note: 'refused', code: 'not-possible' });
		expect(talk.ask).toEqual(open);
		await talk.end();
	});

	it('an opened bend must be measured; a made one is gone back to in its next seat', async () => {
		const talk = await rail();
		const operator = new Operator();
		await operator.play(talk, (ask) => ask.ask === 'decide');
		await talk.send({ do: 'relieve' });
		expect(talk.ask).toMatchObject({ ask: 'measure', bend: 1 });
		const [refused] = await talk.send({ skip: true });
		expect(refused?.code).toBe('not-possible');
		await talk.send({ undo: true });
		await operator.play(talk, atSet(2));
		await talk.send({ reopen: { bend: 1, do: 'pull' } });
		expect(talk.ask).toMatchObject({ ask: 'set', bend: 1, seat: 2 });
		await talk.send({ undo: true });
		await talk.send({ reopen: { bend: 1, do: 'relieve' } });
		expect(talk.ask).toMatchObject({ ask: 'measure', bend: 1 });
		await talk.send({ angle: 39.8 });
		await talk.send({ do: 'accept' });
		expect(talk.ask).toMatchObject({ ask: 'set', bend: 2 });
		await talk.end();
	});

	it('reopening is refused where clamp or follow have no room', async () => {
		const bends = RAIL.bends.map((bend, i) => ({ ...bend, straight: i === 1 ? 2 : bend.straight, angle: 30 }));
		const talk = await rail({ shape: { bends, last: 10, radius: RAIL.radius } }, { follow: 3 });
		await new Operator().play(talk, atSet(3));
		for (const number of [1, 2]) {
			const [refused] = await talk.send({ reopen: { bend: number, do: 'pull' } });
			expect(refused).toMatchObject({ note: 'refused', code: 'not-possible' });
		}
		await talk.end();
	});
});

describe('undo', () => {
	it('brings back every question of a session as it was, one by one to the first, and again after a resume', async () => {
		const file = shop.file(railJob({ checks }));
		const talk = await bend(file, home);
		const operator = new Operator();
		await operator.play(talk, (ask) => ask.ask === 'pull' && ask.bend === 2);
		await talk.send({ loaded: talk.ask.stop + 12 });
		expect(talk.ask).toMatchObject({ ask: 'confirm', of: 'loaded' });
		await talk.send({ reading: talk.ask.expect.value });
		operator.made.set(2, talk.ask.expect.angle);
		await operator.play(talk, (ask) => ask.bend === 3);
		const asked = talk.lines.filter((line) => 'ask' in line).map(question);
		expect(await talk.signal('SIGKILL')).toBe('SIGKILL');

		const back = await bendHere(file, home, '--resume');
		expect(question(back.ask)).toEqual(asked.at(-1));
		expect(back.lines.map((line) => line.note ?? line.ask)).toEqual(['session', 'corrected', 'set']);
		for (const before of asked.slice(0, -1).reverse()) {
			const lines = await back.send({ undo: true });
			expect(question(lines.at(-1) as Line)).toEqual(before);
		}
		const [refused] = await back.send({ undo: true });
		expect(refused).toMatchObject({ note: 'refused', code: 'not-possible' });
		await back.end();
	});
});
