import { describe, expect, it } from 'vitest';
import { type CorrectionInput, correct } from '../../../src/fit/correct.ts';
import { judged, largestMiss } from '../../../src/fit/judged.ts';
import { draws } from '../../../src/practice/random.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { type State, withBend } from '../../../src/session/log/state.ts';
import { correctedNumbers, correctionOf } from '../../../src/session/plan/correction.ts';
import { limitsOf, measuresAfter } from '../../../src/session/plan/design.ts';
import { costBeyondHope, HOPELESS } from '../../../src/session/plan/hope.ts';
import { correctWithin } from '../../../src/session/plan/within.ts';
import { frames } from '../../../src/tube/frames.ts';
import type { Shape } from '../../../src/tube/shape.ts';
import { startOf } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

/** The first bend of a hat came out by so much off. */
function bent(error: number): State {
	const state = initial(startOf(hatJob({ trim: { start: 2, end: 3 } })));
	const planned = state.plan.current[0]!;
	const made = { angle: planned.angle + error, sd: 0.1 };
	const now = withBend(state, 1, { seats: 1, readBack: true, mark: planned.fromStart, rotation: 0, made });
	return { ...now, plan: { ...now.plan, current: correctedNumbers(now) } };
}

/** How often a correction looks at its checks: what its work grows with. */
function looks(run: (asked: CorrectionInput) => unknown, asked: CorrectionInput): number {
	let count = 0;
	const counted = asked.measures.map((measure) => ({
		...measure,
		value: (...of: Parameters<typeof measure.value>) => {
			count++;
			return measure.value(...of);
		},
	}));
	run({ ...asked, measures: counted });
	return count;
}

describe('a tube beyond hope', () => {
	it('costs more than any within hope: none within costs as much', () => {
		const state = bent(0.2);
		const { stock: _, ...asked } = correctionOf(state);
		const limits = limitsOf(state);
		const allowed = measuresAfter(state.design, state.start.job, asked.made).map(({ tolerance }) => tolerance);
		const most = costBeyondHope(asked, limits, allowed);
		const best = correct(asked).shape;
		const draw = draws(83_300_000);
		let within = 0;
		for (let n = 0; n < 400; n++) {
			const shape: Shape = {
				straights: best.straights.map((s, i) => (i < asked.made ? s : s + draw.normal(0, 0.02))),
				bends: best.bends.map((b, i) => (i < asked.made ? b : { ...b, angle: b.angle + draw.normal(0, 0.05) })),
			};
			if (largestMiss(judged(frames(shape), limits), limits) > HOPELESS) continue;
			within++;
			expect(correct({ ...asked, shape }).costBefore).toBeLessThan(most);
		}
		expect(within).toBeGreaterThan(20);
	});

	it('is corrected as least squares have it, with no more work for what no weighing mends', () => {
		const state = bent(60);
		const asked = correctionOf(state);
		expect(correctWithin(state, asked).shape).toEqual(correct(asked).shape);
		expect(looks((input) => correctWithin(state, input), asked)).toBeLessThan(3 * looks(correct, asked));
	});
});
