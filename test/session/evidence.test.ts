import { describe, expect, it } from 'vitest';
import { marginal } from '../../src/fit/as-built.ts';
import { builtNow } from '../../src/session/estimate.ts';
import { bendAndSkip } from '../helpers/bend-to.ts';
import { byBends, plainJob } from '../helpers/plain-job.ts';
import { begin, give, type Run } from '../helpers/session-run.ts';

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
		expect(asked.sd).toBeCloseTo(0.4, 6);
		expect(of(run, 'rotation', 2).sd).toBeCloseTo(0.1, 6);
		expect(run.state.plan.current[2]).not.toEqual(made.state.plan.current[2]);
		expect(run.state.plan.current[1]!.rotation).toBeCloseTo(asked.value + 1.2, 6);
	});

	it('a distance from the far end says where the mark really is', () => {
		const run = told('farEndToMark', 2, made.state.piece - made.state.bends[1]!.mark! - 0.2);
		expect(of(run, 'mark', 2).value).toBeCloseTo(made.state.bends[1]!.mark! + 0.2, 6);
		expect(of(run, 'mark', 2).sd).toBeCloseTo(0.4 / 32, 6);
	});

	it('a leg says where the bend lies behind the one before, and ties the two together', () => {
		const before = builtNow(made.state);
		const run = told('leg', 2, 20.1);
		const after = builtNow(run.state);
		expect(after.input.readings.map(({ name }) => name)).toEqual(['leg 2']);
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
});
