import { type Suspect, suspectsOf } from '../../fit/suspects.ts';
import { at, largestFirst } from '../../maths/list.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import type { Check } from '../../tube/job.ts';
import { builtNow } from '../estimate/estimate.ts';
import type { State } from '../log/state.ts';
import type { DoubtFact, Slip } from '../protocol/facts/index.ts';

/** An error of hands below this many standard deviations explains nothing. */
const FAR_OFF = 3;
/** Sizes that gross errors commonly have: a tape misread, in divisions; a plane set wrong, in degrees (common practice, no source). */
const MARK_SLIP = 16;
const PLANE_SLIP = 10;
/** An error of more than so many of them is not asked about: nobody marks a tube a yard off. */
const MOST_SLIPS = 3;

/**
 * What to look at again when a check does not go with what was made: the angle that it contradicts most, and the one mark or plane that would
 * explain it, if it were off by an amount that marks and planes are off by.
 */
export function lookAt(state: State, { name, kind: read }: Check, reading: number): DoubtFact {
	if (read === 'ovality') return { code: 'look-at', kind: read };
	const doubted = { reading, skipped: false, count: 1 as const };
	const suspects = suspectsOf(builtNow({ ...state, checks: { ...state.checks, [name]: doubted } }));
	const angle = suspects.find(({ kind }) => kind === 'angle');
	const hands = suspects
		.filter(({ kind, off }) => (kind === 'mark' || kind === 'rotation') && off >= FAR_OFF)
		.map((suspect) => ({ suspect, likely: slipLikelihood(state, suspect) }))
		.filter(({ likely }) => likely > 0);
	const [hand] = largestFirst(hands, ({ likely }) => likely);
	return {
		code: 'look-at',
		kind: read,
		...(angle ? { bend: 1 + (angle.bend ?? 0), angle: angle.value } : {}),
		...(hand ? { slip: likelySlip(state, hand.suspect) } : {}),
	};
}

/** How much better all fits without it, less how rare an error of that size is: logarithms of likelihoods. */
function slipLikelihood(state: State, { kind, value, would, off }: Suspect): number {
	const { tape } = state.start.job.tooling;
	const slip = kind === 'mark' ? (would - value) / (MARK_SLIP * tape) : normalizeRotation(would - value) / PLANE_SLIP;
	return Math.abs(slip) > MOST_SLIPS ? 0 : (off ** 2 - slip ** 2) / 2;
}

function likelySlip(state: State, { kind, bend, value, would }: Suspect): Slip {
	const number = 1 + (bend ?? 0);
	if (kind === 'rotation') return { of: 'rotation', bend: number, was: value, would: normalizeRotation(would) };
	return { of: 'mark', bend: number, was: at(state.bends, number - 1).mark ?? value, would };
}
