import { describe, expect, it } from 'vitest';
import { marginal } from '../../src/fit/as-built.ts';
import { ask } from '../../src/session/ask.ts';
import { builtNow } from '../../src/session/estimate/estimate.ts';
import { bendAndSkip, bendTo } from '../helpers/session/bend-to.ts';
import { begin, give, open, type Run } from '../helpers/session/session-run.ts';
import { whyOf } from '../helpers/session/why.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const job = plainJob({
	shape: byBends(
		[
			[16, 40, 0],
			[20, 60, 110],
			[20, 50, -75],
		],
		18,
	),
	trim: { start: 1, end: 2 },
	tooling: { growth: 1, tape: 1 / 32 },
});

/** Two bends made as asked. */
const made = ((): Run => {
	let run = begin(job);
	for (const bend of [0, 1]) run = give(bendAndSkip(run, run.state.plan.current[bend]!.angle), { do: 'accept' });
	return run;
})();

const of = (run: Run, kind: 'mark' | 'angle' | 'rotation', bend: number) =>
	marginal(builtNow(run.state), kind, bend - 1);
const told = (kind: string, bend: number, reading: number) => {
	let run = give(made, { evidence: { kind, bend, reading } });
	if ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
	return run;
};

describe('what a fabricator tells of a made tube at any time', () => {
	it('a rotation read back is known four times as finely, and is what the rest is corrected for', () => {
		const asked = of(made, 'rotation', 2);
		const run = told('rotation', 2, asked.value + 1.2);
		expect(of(run, 'rotation', 2).value).toBeCloseTo(asked.value + 1.2, 6);
		expect(asked.sd).toBeCloseTo(0.33, 6);
		expect(of(run, 'rotation', 2).sd).toBeCloseTo(0.1, 6);
		expect(run.state.plan.current[2]).not.toEqual(made.state.plan.current[2]);
		expect(run.state.plan.current[1]!.rotation).toBeCloseTo(asked.value + 1.2, 6);
	});

	it('a distance from the far end says where the mark really is', () => {
		const run = told('farEndToMark', 2, made.state.piece - made.state.bends[1]!.mark! - 0.2);
		expect(of(run, 'mark', 2).value).toBeCloseTo(made.state.bends[1]!.mark! + 0.2, 6);
		// A tape in 32nds rounds less than one in 16ths, but the hands are the same: .42 mm as a check is read, and half of 1/32 over the root of 12.
		expect(of(run, 'mark', 2).sd).toBeCloseTo(Math.hypot(0.42 / 25.4, 1 / 64 / Math.sqrt(12)), 6);
	});

	it('a leg says where the bend lies behind the one before, and ties the two together', () => {
		const before = builtNow(made.state);
		const run = told('leg', 2, 20.1);
		const after = builtNow(run.state);
		expect(after.input.readings.map(({ name }) => name)).toEqual(['leg-2']);
		const [leg] = after.input.readings;
		expect(leg!.value - after.misses[0]!).toBeCloseTo(20.1, 6);
		// Bend 2's mark was told by nothing else: its error is now bend 1's, the arc's and the leg's, and they go together.
		expect(before.covariance[0]![4]).toBeCloseTo(0, 12);
		const [one, two] = [of(run, 'mark', 1), of(run, 'mark', 2)];
		expect(after.covariance[0]![4]! / one.sd ** 2).toBeCloseTo(1, 6);
		expect(two.sd).toBeGreaterThan(Math.hypot(one.sd, 1 / 32));
	});

	it('a leg of bend 1 says where its mark is, the trim not counted', () => {
		const run = told('leg', 1, 17.05);
		expect(of(run, 'mark', 1).value).toBeCloseTo(17.05, 6);
		expect(of(run, 'mark', 1).sd).toBeCloseTo(1 / 32, 6);
	});

	it('a plane on the wrong side is taken as it is, once it is confirmed, and the rest is bent for it', () => {
		const run = give(made, { evidence: { kind: 'rotation', bend: 2, reading: -110 } });
		expect(run.outputs.at(-1)).toMatchObject({ ask: 'confirm', of: 'rotation', reading: -110 });
		const kept = give(run, { keep: true });
		expect(of(kept, 'rotation', 2).value).toBeCloseTo(-110, 6);
		expect(of(give(kept, { undo: true }), 'rotation', 2).value).toBeCloseTo(of(made, 'rotation', 2).value, 9);
	});

	describe('against a check that was read before', () => {
		// Turned about 110 degrees the second bend's corner lies off the first leg by 20 in and the arcs' setbacks, times sin 40.
		const checked = plainJob({
			...job,
			checks: [{ name: 'corner', kind: 'drop', from: 1, to: { straight: 3 }, surface: 'centre', tolerance: 1 / 16 }],
			tooling: { growth: 1, tape: 1 / 32 },
		});
		const read = ((): Run => {
			let run = give(bendAndSkip(begin(checked), 40), { do: 'accept' });
			run = bendTo(run, run.state.plan.current[1]!.angle);
			run = give(run, { reading: open(run, 'check').expect.value });
			return give(run, { do: 'accept' });
		})();
		const tell = (kind: 'mark' | 'farEndToMark' | 'leg', off: number, from = read) => {
			const mark = from.state.bends[1]!.mark! + off;
			// A leg is measured from where the first arc ends: 40 degrees of 6 in.
			const arc = (6 * of(from, 'angle', 1).value * Math.PI) / 180;
			const reading = {
				mark,
				farEndToMark: from.state.piece - mark,
				leg: mark - of(from, 'mark', 1).value - arc,
			}[kind];
			const run = give(from, { evidence: { kind, bend: 2, reading } });
			return ask(run.state)?.ask === 'confirm' ? give(run, { keep: true }) : run;
		};

		it.each(['mark', 'farEndToMark', 'leg'] as const)(
			'a %s an inch off leaves the angles as measured, and the check is set aside',
			(kind) => {
				const run = tell(kind, 1);
				for (const bend of [1, 2])
					expect(Math.abs(of(run, 'angle', bend).value - of(made, 'angle', bend).value)).toBeLessThan(0.3);
				expect(Math.abs(of(run, 'mark', 2).value - read.state.bends[1]!.mark! - 1)).toBeLessThan(0.01);
				expect(run.state.checks.corner).toMatchObject({ count: 0 });
				const pull = open(give(run, { ready: true }), 'pull');
				expect(whyOf(pull)).toMatch(
					/^Set aside: check "corner", [\d/ ]+ in\. It does not go with what was told since\. /,
				);
				expect(give(run, { undo: true }).state.checks.corner).toMatchObject({ count: 1 });
			},
		);

		it('a mark a hair off takes nothing from it', () => {
			expect(tell('mark', 1 / 64).state.checks.corner).toMatchObject({ count: 1 });
		});

		it('nor does one that goes with what the check read', () => {
			let run = give(bendAndSkip(begin(checked), 40), { do: 'accept' });
			run = bendTo(run, run.state.plan.current[1]!.angle);
			// Another inch along the second leg, which rises by 40 degrees.
			run = give(run, { reading: open(run, 'check').expect.value + Math.sin((40 * Math.PI) / 180) });
			run = give(give(run, { keep: true }), { do: 'accept' });
			expect(tell('mark', 1, run).state.checks.corner).toMatchObject({ count: 2 });
		});
	});
});
