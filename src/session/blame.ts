import { type Suspect, suspectsOf } from '../fit/suspects.ts';
import { normalizeRotation } from '../tube/angles.ts';
import type { Check } from '../tube/job.ts';
import { formatTape } from '../units/tape.ts';
import { at } from './as-built.ts';
import { builtNow } from './estimate.ts';
import { show } from './show.ts';
import type { State } from './state.ts';

/** An error of hands below this many standard deviations explains nothing. */
const EXPLAINS = 3;
/** Sizes that gross errors commonly have: a tape misread, in divisions; a plane set wrong, in degrees (common practice, no source). */
const MARK_SLIP = 16;
const PLANE_SLIP = 10;
/** An error of more than so many of them is not asked about: nobody marks a tube a yard off. */
const MOST_SLIPS = 3;

/** What a check is read with. */
const TOOL: Record<Check['kind'], string> = {
	drop: 'straight edge',
	out: 'straight edge',
	angle: 'angle finder',
	span: 'tape',
	ovality: 'calliper',
};

/**
 * The words to ask about a check reading that does not go with what was made: the angle that it contradicts most, and the one mark
 * or plane that would explain it, if it were off by an amount that marks and planes are off by.
 */
export function blame(state: State, { name, kind: read }: Check, reading: number): string {
	const doubted = { reading, skipped: false, count: 1 as const };
	const suspects = suspectsOf(builtNow({ ...state, checks: { ...state.checks, [name]: doubted } }));
	const angle = suspects.find(({ kind }) => kind === 'angle');
	const against = angle
		? `It does not go with ${show(angle.value, 1)} degrees at bend ${1 + (angle.bend ?? 0)}: measure`
		: 'Measure';
	const [hand] = suspects
		.filter(({ kind, off }) => (kind === 'mark' || kind === 'rotation') && off >= EXPLAINS)
		.map((suspect) => ({ suspect, likely: likelihood(state, suspect) }))
		.filter(({ likely }) => likely > 0)
		.sort((a, b) => b.likely - a.likely);
	const or = hand ? `; or ${asked(state, hand.suspect)}` : '';
	return `${against} again, and see that the ${TOOL[read]} lies where the check says${or || '.'}`;
}

/** How much better all fits without it, less how rare an error of that size is: logarithms of likelihoods. */
function likelihood(state: State, { kind, value, would, off }: Suspect): number {
	const { tape } = state.start.job.tooling;
	const slip = kind === 'mark' ? (would - value) / (MARK_SLIP * tape) : normalizeRotation(would - value) / PLANE_SLIP;
	return Math.abs(slip) > MOST_SLIPS ? 0 : (off ** 2 - slip ** 2) / 2;
}

function asked(state: State, { kind, bend, value, would }: Suspect): string {
	const number = 1 + (bend ?? 0);
	const { tooling, units } = state.start.job;
	if (kind === 'rotation') {
		return `does the plane of bend ${number} lie at ${show(normalizeRotation(would), 1)} degrees, not ${show(value, 1)}?`;
	}
	const mark = at(state.bends, number - 1).mark ?? value;
	return `was the mark of bend ${number} at ${formatTape(would, tooling.tape, units)} ${units}, not ${formatTape(mark, tooling.tape, units)} ${units}?`;
}
