import { describe, expect, it } from 'vitest';
import { rawTubeOf } from '../../../src/fit/as-built.ts';
import { type RawTube, uncutShape } from '../../../src/fit/raw-tube.ts';
import { ask } from '../../../src/session/ask.ts';
import { dieSpreads } from '../../../src/session/estimate/die-spread.ts';
import { builtNow } from '../../../src/session/estimate/estimate.ts';
import { lessonOf } from '../../../src/session/estimate/lesson-of-session.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { beginning, type Start } from '../../../src/session/log/start.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import { checkValue } from '../../../src/tube/checks.ts';
import type { GrowthSource } from '../../../src/tube/growth.ts';
import type { Job } from '../../../src/tube/job.ts';
import { BRACE_BENDS, BRACE_CHECKS } from '../../bench/drawn.ts';
import { give, giveAll, open, type Run, startOf } from '../../helpers/session/session-run.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

const brace = plainJob({
	name: 'brace',
	trim: { start: 1, end: 1 },
	shape: byBends(BRACE_BENDS, 13),
	tolerance: { length: 3 / 32, shape: 3 / 8 },
	checks: BRACE_CHECKS,
});
const MECHANICS = startOf(brace).growth;

const expecting = (growth: number, growthFrom: GrowthSource = 'expected', job: Job = brace): Start => ({
	...startOf(job),
	growth,
	growthFrom,
});

/** The tube whose bends come out with the radius of mechanics, made by the numbers asked for; all is told and read without error. */
function bent(start: Start): { run: Run; advised: string[] } {
	let run: Run = { state: initial(start), outputs: [] };
	const advised: string[] = [];
	const turns: number[] = [];
	const marks: number[] = [];
	const angles: number[] = [];
	const reads = (name: string) => {
		const tube: RawTube = {
			bends: angles.map((angle, i) => ({
				mark: marks[i]!,
				angle,
				rotation: i === 0 ? 0 : turns[i]!,
				radius: MECHANICS * brace.tooling.clr,
				wrapped: angle,
			})),
			stretch: 0,
			markOffset: 0,
			radius: MECHANICS * brace.tooling.clr,
		};
		const { check } = run.state.design.checks.find((each) => each.check.name === name)!;
		return checkValue(check, uncutShape(tube, run.state.piece), brace.tube);
	};
	const answer = (asked: Ask): unknown => {
		switch (asked.ask) {
			case 'set':
				[marks[asked.bend - 1], turns[asked.bend - 1]] = [asked.mark.fromStart, asked.rotation];
				return { ready: true };
			case 'pull':
				return { loaded: asked.stop };
			case 'measure': {
				angles[asked.bend - 1] = run.state.plan.current[asked.bend - 1]!.angle;
				return { angles: [angles[asked.bend - 1], angles[asked.bend - 1]] };
			}
			case 'confirm':
				return { keep: true };
			case 'check':
				return { reading: reads(asked.name) };
			case 'decide':
				return decided(asked);
		}
	};
	const decided = ({ advice, of, bend }: Extract<Ask, { ask: 'decide' }>): unknown => {
		advised.push(advice);
		if (advice !== 'measure' || typeof of !== 'object')
			return advice === 'scrap' ? { do: 'scrap', why: 'lost' } : { do: 'accept' };
		if (of.kind === 'check') return { reading: reads(of.name ?? '') };
		const at = (of.bend ?? bend) - 1;
		const now = { angle: angles, mark: marks, rotation: turns }[of.kind][at];
		return { do: 'evidence', kind: of.kind, bend: at + 1, reading: now };
	};
	for (let asked = ask(run.state); asked !== null; asked = ask(run.state)) {
		const before = run.state;
		run = give({ ...run, outputs: [asked] }, answer(asked));
		if (run.state === before) throw new Error(`refused: ${JSON.stringify([asked, run.outputs])}`);
	}
	return { run, advised };
}

describe('how well the radius of a die is known', () => {
	it('is as where it was measured, where all that is expected of it is one', () => {
		expect(dieSpreads(expecting(MECHANICS))).toEqual(dieSpreads(expecting(1.1, 'job')));
		expect(dieSpreads(expecting(1.1, 'die'))).toEqual(dieSpreads(expecting(1.1, 'job')));
	});

	it('is the less the further what the die has shown lies from what mechanics has, whichever the tube is marked for', () => {
		const of = (growth: number) => dieSpreads(expecting(growth))[0]!;
		expect(of(1.05)).toBeGreaterThan(of(MECHANICS));
		expect(of(1.1)).toBeGreaterThan(of(1.05));
		const first = giveAll({ state: initial({ ...startOf(brace), learn: true }), outputs: [] }, { ready: true });
		const { stop, target } = open(first, 'pull');
		const short = giveAll(first, { loaded: stop }, { angles: [target - 3, target - 3] });
		const lesson = lessonOf(short.state)!;
		const follows = { ...startOf(brace), ...beginning({ job: brace }, [lesson]) };
		const held = { ...startOf(brace), ...beginning({ job: brace }, [lesson], { value: MECHANICS, from: 'expected' }) };
		expect(follows.growth).toBeGreaterThan(MECHANICS + 0.005);
		expect(held.growth).toBe(MECHANICS);
		expect(dieSpreads(held)[0]).toBeGreaterThan(dieSpreads(startOf(brace))[0]!);
		expect(dieSpreads(held)[0]).toBeCloseTo(dieSpreads(follows)[0]!, 12);
	});

	it('is why no turn is taken for wrong where the bends are as mechanics has them, and another radius was expected', () => {
		const { run, advised } = bent(expecting(1.1));
		expect(advised).not.toContain('scrap');
		const built = builtNow(run.state);
		const lies = rawTubeOf(built).bends;
		for (const [i, { rotation }] of lies.entries()) {
			const told = built.input.bends[i]!.rotation.value;
			expect(Math.abs(rotation - told)).toBeLessThan(1);
		}
		const radius = lies[2]!.radius / brace.tooling.clr;
		expect(Math.abs(radius - MECHANICS)).toBeLessThan(Math.abs(radius - 1.1));
	});
});
