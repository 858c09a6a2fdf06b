import { at } from '../../maths/list.ts';
import { exceeds } from '../../maths/scalar.ts';
import { made } from '../../springback/filter.ts';
import { isInside } from '../../tube/tolerance.ts';
import { endBefore, tubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { LeastBad, StockLeft, TubeOutcome, Tweak } from '../protocol/asks.ts';
import type { Missed } from '../protocol/facts/index.ts';
import { target } from './bend-check.ts';
import { ifOpened } from './what-if.ts';

/** Where the direction of the last leg cannot be brought nearer than this, in degrees, the piece is another tube. */
const ANOTHER_DIRECTION = 3;

/** The same of the far end's place, as a part of the piece. */
const ANOTHER_PLACE = 0.02;

/** The least bad that this piece can still become, and what can be used of it; null where it is not `bad` and accepting or going back makes it fit. `opened`: what opening it comes to, where that is known already. */
export function leastBadOf(
	state: State,
	{ accepted, opened, tweaks }: { accepted: TubeOutcome; opened: TubeOutcome | null; tweaks: readonly Tweak[] },
	bad: boolean,
): LeastBad | null {
	if (!bad && (accepted.within || tweaks.some((tweak) => tweak.within))) return null;
	const over = made(state.filter).angle - target(state);
	// What is given up since it cannot be worked back is not mended by working it back.
	const mayOpen = state.start.job.mayOpen && !bad && over > 0 && bendAt(state, state.bend).relievedFrom === null;
	const options: LeastBad['best'][] = [
		{ do: 'accept', bend: state.bend, ...accepted },
		...(mayOpen ? [{ do: 'relieve' as const, bend: state.bend, ...(opened ?? ifOpened(state, over)) }] : []),
		...tweaks.map(({ bend, do: _, by: __, expect, chance, ...outcome }) => ({
			do: 'reopen' as const,
			bend,
			...outcome,
		})),
	];
	const best = options.reduce((a, b) => (exceeds(a.left, b.left) ? b : a));
	return best.within && !bad ? null : { best, stock: stockOf(state) };
}

/** True where the best is so far off that nobody would call it the tube of the drawing. */
export function isHopeless({ endOffset, endAngle, within }: TubeOutcome, piece: number): boolean {
	return !within && (endAngle > ANOTHER_DIRECTION || endOffset > ANOTHER_PLACE * piece);
}

/** What is still straight: raw lengths from the raw start end on, the last one behind the last bend that was pulled. */
function stockOf(state: State): StockLeft {
	const pulled = state.bends.findLastIndex((bend) => bend.pulls.length > 0) + 1;
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const behind = Math.max(0, state.piece - endBefore(state, pulled + 1));
	const straights = [at(shape.straights, 0) + trimStart, ...shape.straights.slice(1, pulled), behind];
	return { straights, behind, again: behind >= state.design.cut };
}

/** What is missed by an outcome: the far end, and what is outside its tolerance. */
export function missedBy({ design, start }: State, { endOffset, endAngle, shape, checks }: TubeOutcome): Missed {
	const { tolerance } = start.job;
	const corner = isInside(shape.off, tolerance.shape) ? {} : { corner: { ...shape, tolerance: tolerance.shape } };
	const outside = design.checks.flatMap(({ check, design: aim }) => {
		const off = (checks.find(({ name }) => name === check.name)?.value ?? aim) - aim;
		const { name, kind } = check;
		return isInside(off, check.tolerance) ? [] : [{ name, kind, off, tolerance: check.tolerance }];
	});
	const endAllowed = { place: tolerance.shape, direction: tolerance.direction };
	return { endOffset, endAngle, endAllowed, ...corner, checks: outside };
}
