import { describe, expect, it } from 'vitest';
import { ask } from '../../src/session/ask.ts';
import { turnSd } from '../../src/session/estimate/hands.ts';
import { tubeAtWork } from '../../src/session/estimate/tube-at-work.ts';
import { doneNote } from '../../src/session/outputs.ts';
import { expectCheck } from '../../src/session/reading/check-reading.ts';
import { sessionView } from '../../src/session/report/views.ts';
import { made } from '../../src/springback/filter.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { begin, give, giveAll, open, type Run } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

/** Answers the open asks so that the bend at work is measured at `angle`; checks are given by `reading` or skipped. */
function bend(run: Run, angle: number, reading?: (name: string) => number): Run {
	const bendNumber = run.state.bend;
	let now = run;
	for (;;) {
		const asked = ask(now.state);
		if (!asked || now.state.bend !== bendNumber) return now;
		if (asked.ask === 'set') now = give(now, { ready: true });
		else if (asked.ask === 'pull') now = give(now, { loaded: asked.stop });
		else if (asked.ask === 'measure') now = give(now, asked.readings === 2 ? { angles: [angle, angle] } : { angle });
		else if (asked.ask === 'confirm') now = give(now, { keep: true });
		else if (asked.ask === 'check') now = give(now, reading ? { reading: reading(asked.name) } : { skip: true });
		else now = give(now, { do: 'accept' });
	}
}

/** Two bends of this angle, the second turned by `rotation`, so that their outer legs lie side by side, which a check reads. */
const sideBySide = (angle: number, rotation: number) =>
	plainJob({
		shape: byBends(
			[
				[20, angle, 0],
				[20, angle, rotation],
			],
			20,
		),
		checks: [{ name: 'feet', kind: 'angle', between: [1, 3], tolerance: 1 }],
		tooling: { growth: 1 },
	});

describe('what a check tells', () => {
	it('sharpens the angles of bends already made', () => {
		const first = bend(begin(hatJob()), 17);
		const before = first.state.bends[0]!.made!;
		const crownAt = (angle: number) => {
			const bends = first.state.bends.map((b, i) => (i === 0 ? { ...b, made: { angle, sd: 0.1 } } : b));
			const { shape } = tubeAtWork({ ...first.state, bends }, first.state.plan.current);
			return checkValue(first.state.design.checks[0]!.check, shape, first.state.start.job.tube);
		};
		// The tube really has 17.2: the crown shows it, and the crown depends on bend 1 alone.
		const after = bend(first, first.state.plan.current[1]!.angle, () => crownAt(17.2)).state.bends[0]!.made!;
		expect(after.sd).toBeLessThan(before.sd);
		expect(Math.abs(after.angle - 17.2)).toBeLessThan(Math.abs(before.angle - 17.2));
	});

	it('is nothing of the bends where legs lie side by side: past half a turn an angle reads as much as short of it', () => {
		const job = sideBySide(90, 0);
		const madeWith = (reading?: number) => {
			const first = bend(begin(job), 90.2);
			return bend(first, first.state.plan.current[1]!.angle + 0.3, reading === undefined ? undefined : () => reading)
				.state;
		};
		// Both bends are over: the legs close up to 179.5, and to the finder that is what two bends short would be.
		const read = madeWith(179.5);
		expect(read.checks.feet).toMatchObject({ reading: 179.5, count: 0 });
		expect(read.bends.map(({ made }) => made)).toEqual(madeWith().bends.map(({ made }) => made));
	});

	it('is as unsure where legs lie side by side as angles and turn make it: either way off counts alike', () => {
		const job = sideBySide(30, 180);
		const first = bend(begin(job), 30);
		const one = first.state.bends[0]!.made!;
		const second = (reading: number) => {
			const pulled = giveAll(first, { ready: true });
			return giveAll(pulled, { loaded: open(pulled, 'pull').stop }, { angles: [reading, reading] });
		};
		// Read so that both count as equal.
		let reading = one.angle;
		for (let k = 0; k < 20; k++) reading += one.angle - made(second(reading).state.filter).angle;
		const run = second(reading);
		const other = made(run.state.filter);
		const { expect: expected } = open(run, 'check');
		// By hand: in the plane the two angles' difference, aside of it a turn about the middle leg by the sine of 30 degrees; what that reads, by quadrature.
		const level = { mean: one.angle - other.angle, sd: Math.hypot(one.sd, other.sd) };
		const aside = Math.sin(Math.PI / 6) * turnSd(run.state.start);
		let [square, all] = [0, 0];
		for (let x = -5; x <= 5; x += 0.05) {
			for (let y = -5; y <= 5; y += 0.05) {
				const weight = Math.exp(-(x * x + y * y) / 2);
				square += weight * (Math.hypot(level.mean + level.sd * x, aside * y) - expected.value) ** 2;
				all += weight;
			}
		}
		expect(expected.value).toBeLessThan(0.001);
		expect(expected.sd / Math.sqrt(square / all)).toBeCloseTo(1, 1);
	});

	it('stands when it was read again, and moves the angle', () => {
		const job = plainJob({
			shape: byBends([[20, 40, 0]], 20),
			checks: [{ name: 'spread', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 1 / 16 }],
			tooling: { growth: 1 },
		});
		const measured = (reading: number) => {
			let run = giveAll(begin(job), { ready: true });
			run = give(run, { loaded: open(run, 'pull').stop });
			run = give(run, { angles: [40, 40] });
			if (ask(run.state)?.ask === 'confirm') run = give(run, { keep: true });
			const { expect: expected } = open(run, 'check');
			run = give(run, { reading: expected.value + reading });
			if (ask(run.state)?.ask === 'confirm') run = give(run, { keep: true });
			return open(run, 'decide').made.angle;
		};
		expect(measured(-1.5)).toBeGreaterThan(measured(-0.2) + 0.1);
	});

	it('is forgotten when what it measured is bent further', () => {
		const done = bend(bend(begin(hatJob()), 17), 34, () => 6.37);
		expect(done.state.checks.crown?.reading).toBe(6.37);
		const opened = give(done, { reopen: { bend: 1, do: 'relieve' } });
		expect(opened.state.checks.crown).toBeUndefined();
	});

	it('includes the trim of an end that is not cut yet, in the direction that the end points', () => {
		const job = plainJob({
			shape: byBends(
				[
					[20, 90, 0],
					[20, 90, 0],
				],
				20,
			),
			trim: { start: 1, end: 1 },
			checks: [{ name: 'feet', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 1 / 16 }],
			tooling: { growth: 1 },
		});
		// Two legs side by side: longer ends lie no further apart. 20 + 2 x 6 by hand.
		const { state } = begin(job);
		expect(state.design.checks[0]!.design).toBeCloseTo(32, 9);
		expect(expectCheck(state, 'feet').value).toBeCloseTo(32, 6);
	});
});

describe('the piece', () => {
	it('cannot have a mark beside it', () => {
		for (const mark of [1e200, 1000]) {
			const [first] = give(begin(hatJob()), { ready: true, mark }).outputs;
			expect(first).toMatchObject({ note: 'refused', code: 'not-possible' });
		}
	});

	it('that is short ends before its place, and says by how much', () => {
		const cut = begin(hatJob()).state.piece;
		const { state } = bend(bend(bend(give(begin(hatJob()), { ready: true, length: cut - 1.2 }), 17), 34), 17);
		const done = doneNote(state, '');
		expect(done.trim?.end).toBeCloseTo(-1.2, 0);
		expect(done.endOffset).toBeCloseTo(1.2, 0);
	});

	it('takes a leg as measured for the mark, so that one tube shows one number', () => {
		const first = bend(begin(hatJob()), 17);
		const second = give(first, { ready: true });
		const told = give(second, { evidence: { kind: 'leg', bend: 2, reading: 20.4 } });
		const again = give(told, { reseat: true });
		expect(open(again, 'set').mark.fromLastBend).toBeCloseTo(20.4, 9);
	});
});

describe('two readings that agree but are unlikely', () => {
	it('are asked again', () => {
		let run = give(begin(plainJob({ tooling: { growth: 1 } })), { ready: true });
		run = give(run, { loaded: open(run, 'pull').stop });
		expect(open(give(run, { angles: [95, 95] }), 'confirm')).toMatchObject({ of: 'angle', reading: 95 });
	});
});

describe('correcting what was answered', () => {
	it('says nothing of a correction where nothing changed', () => {
		const first = bend(begin(hatJob()), 16.8);
		const entry = first.state.entries.find((e) => e.events.some((event) => event.type === 'tube-set'))!.entry;
		const pulled = giveAll(first, { ready: true });
		const loaded = give(pulled, { loaded: open(pulled, 'pull').stop });
		const amended = give(loaded, { amend: { entry: loaded.state.entries.length, reading: open(pulled, 'pull').stop } });
		expect(entry).toBe(1);
		expect(amended.outputs.map((o) => ('note' in o ? o.note : o.ask))).toEqual(['measure']);
	});

	it('asks again for a correction that cannot be, and then takes it', () => {
		const first = bend(begin(hatJob()), 17);
		const record = first.state.entries.find((e) =>
			e.events.some((x) => x.type === 'reading-taken' && x.reading.of === 'loaded'),
		)!;
		const doubted = give(first, { amend: { entry: record.entry, reading: 90 } });
		expect(open(doubted, 'confirm')).toMatchObject({ of: 'loaded', reading: 90, bend: 1 });
		const stop = open(doubted, 'confirm').expect.value;
		const settled = give(doubted, { reading: stop });
		expect(open(settled, 'set')).toMatchObject({ bend: 2, target: open(first, 'set').target });
		expect(open(give(give(settled, { undo: true }), { undo: true }), 'set').bend).toBe(2);
	});

	it('puts one reading in the place of two given together', () => {
		let run = give(begin(hatJob()), { ready: true });
		run = give(run, { loaded: open(run, 'pull').stop });
		run = give(run, { angles: [14, 14.2] });
		const amended = give(run, { amend: { entry: 3, reading: 14.1 } });
		expect(amended.state.bends[0]?.pulls[0]?.measured).toEqual([14.1]);
		expect(open(amended, 'decide').made.sd).toBeGreaterThan(open(run, 'decide').made.sd);
	});

	it('keeps the old numbers through evidence that changes nothing', () => {
		const first = bend(begin(hatJob()), 16.2);
		const kept = give(first, { plan: 'old' });
		const told = give(kept, { evidence: { kind: 'rotation', bend: 1, reading: 0 } });
		expect(open(told, 'set')).toMatchObject({ plan: 'old', target: 34 });
	});

	it('lists pulls taken back in their seat and in the order made', () => {
		let run = give(begin(hatJob()), { ready: true });
		const { stop } = open(run, 'pull');
		run = giveAll(run, { loaded: stop }, { undo: true }, { undo: true }, { ready: true }, { loaded: stop - 0.5 });
		const pulls = sessionView(run.state).bends[0]!.pulls;
		expect(pulls.map(({ seat, void: undone }) => [seat, undone])).toEqual([
			[1, true],
			[1, false],
		]);
	});
});

describe('a bend that was only set', () => {
	it('is corrected anew when a made one is changed', () => {
		const two = bend(bend(begin(hatJob()), 17), 34);
		const relieved = (run: Run) =>
			open(bend(give(run, { reopen: { bend: 1, do: 'relieve' } }), 15), 'set').mark.fromStart;
		expect(relieved(give(two, { ready: true }))).toBeCloseTo(relieved(two), 9);
	});
});

describe('answers with names from the language', () => {
	it.each(['constructor', 'toString', '__proto__'])('%s is not understood', (key) => {
		const raw = JSON.parse(`{"${key}":1,"x":2}`) as unknown;
		expect(give(begin(hatJob()), raw).outputs[0]).toMatchObject({ note: 'refused', code: 'not-understood' });
	});
});
