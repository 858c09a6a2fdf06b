import { firstWhole } from '../../maths/halving.ts';
import { at, largestFirst } from '../../maths/list.ts';
import { madeCount, type State, withBend } from '../log/state.ts';
import { correctedNumbers, tubeOutcome } from '../plan/correction.ts';
import type { TubeOutcome } from '../protocol/asks.ts';
import type { LastBendMends } from '../protocol/notes.ts';

/** Errors further off than this are no question of mending, degrees; and so finely is it told. */
export const MOST_MENDED = 3;
const FINENESS = 0.25;

/**
 * While the second-last bend is the next to be made: how far it may come out from its number so that the last bend still brings the
 * tube within all its tolerances, and what is left to hope for when it comes out at the edge of its own. Null at any other time.
 */
export function lastCanMend(state: State): LastBendMends | null {
	const bend = state.bends.length - 1;
	if (bend < 1 || madeCount(state) !== bend - 1) return null;
	const after = (off: number): TubeOutcome[] => (off === 0 ? [0] : [-off, off]).map((by) => lastAlone(state, by));
	const misses = (steps: number) => !after(steps * FINENESS).every(({ within }) => within);
	const upTo = misses(0) ? 0 : FINENESS * (firstWhole(misses, 0, MOST_MENDED / FINENESS + 1) - 1);
	const { under, over: past } = state.start.job.tolerance;
	const off = Math.max(under, past);
	const [worst] = largestFirst(after(off), ({ left }) => left);
	if (!worst) return null;
	return { bend, upTo, off, left: worst };
}

/** What becomes of the tube when the second-last bend is off by so much and only the last is left. */
function lastAlone(state: State, by: number): TubeOutcome {
	const bend = state.bends.length - 1;
	const { fromStart, angle, rotation } = at(state.plan.current, bend - 1);
	const made = withBend(state, bend, { mark: fromStart, rotation, made: { angle: Math.max(1, angle + by), sd: 0 } });
	return tubeOutcome(made, correctedNumbers(made));
}
