import { at } from './as-built.ts';
import { correctedNumbers, outcomeOf } from './correction.ts';
import type { Mend, Outcome, Predicted } from './protocol.ts';
import { show } from './show.ts';
import { madeCount, type State, withBend } from './state.ts';

/** Errors further off than this are no question of mending, degrees; and so finely is it told. */
const MOST = 3;
const FINENESS = 0.25;

/**
 * While the second-last bend is the next to be made: how far it may come out from its number so that the last bend still brings the
 * tube within all its tolerances, and what is left to hope for when it comes out at the edge of its own. Null at any other time.
 */
export function lastCanMend(state: State): Mend | null {
	const bend = state.bends.length - 1;
	if (bend < 1 || madeCount(state) !== bend - 1) return null;
	const after = (off: number): Outcome[] => (off === 0 ? [0] : [-off, off]).map((by) => lastAlone(state, by));
	let upTo = 0;
	let over = MOST + FINENESS;
	const fits = (off: number) => after(off).every(({ within }) => within);
	if (!fits(0)) over = 0;
	while (over - upTo > FINENESS) {
		const middle = upTo + FINENESS * Math.max(1, Math.round((over - upTo) / 2 / FINENESS));
		if (fits(middle)) upTo = middle;
		else over = middle;
	}
	const { under, over: past } = state.start.job.tolerance;
	const off = Math.max(under, past);
	const [worst] = after(off).sort((a, b) => b.left - a.left);
	if (!worst) return null;
	return { bend, upTo, off, left: worst, says: words(state, bend, upTo, off, worst) };
}

/** What becomes of the tube when the second-last bend is off by so much and only the last is left. */
function lastAlone(state: State, by: number): Outcome {
	const bend = state.bends.length - 1;
	const { fromStart, angle, rotation } = at(state.plan.current, bend - 1);
	const made = withBend(state, bend, { mark: fromStart, rotation, made: { angle: Math.max(1, angle + by), sd: 0 } });
	return outcomeOf(made, correctedNumbers(made));
}

function words(state: State, bend: number, upTo: number, off: number, left: Predicted): string {
	const { units } = state.start.job;
	const edge = `${show(off)} off, the far end would be ${show(left.endOffset, 3)} ${units} and ${show(left.endAngle, 2)} degrees from its design.`;
	if (upTo === 0)
		return `The last bend alone cannot bring the tube within its tolerances: bend ${bend} has to. With it ${edge}`;
	const most = upTo >= MOST ? `${show(upTo)} degrees and more` : `${show(upTo)} degrees`;
	return `Bend ${bend} may come out up to ${most} off and the last bend still mends it. With it ${edge}`;
}
