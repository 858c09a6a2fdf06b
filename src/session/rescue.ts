import { made } from '../springback/filter.ts';
import { at, endBefore, tubeAtWork } from './as-built.ts';
import { target } from './bend-check.ts';
import { checkUnit } from './number-kinds.ts';
import type { Outcome, Rescue, Stock, Tweak } from './protocol.ts';
import { show } from './show.ts';
import type { State } from './state.ts';
import { bendAt } from './state.ts';
import { ifOpened } from './what-if.ts';

/** Where the direction of the last leg cannot be brought nearer than this, in degrees, the piece is another tube. */
const ANOTHER_DIRECTION = 3;

/** The same of the far end's place, as a part of the piece. */
const ANOTHER_PLACE = 0.02;

/** The least bad that this piece can still become, and what can be used of it; null where it is not `bad` and accepting or going back makes it fit. */
export function rescueOf(state: State, accepted: Outcome, tweaks: readonly Tweak[], bad: boolean): Rescue | null {
	if (!bad && (accepted.within || tweaks.some((tweak) => tweak.within))) return null;
	const over = made(state.filter).angle - target(state);
	// What is given up since it cannot be worked back is not mended by working it back.
	const mayOpen = !bad && over > 0 && bendAt(state, state.bend).relievedFrom === null;
	const options: Rescue['best'][] = [
		{ do: 'accept', bend: state.bend, ...accepted },
		...(mayOpen ? [{ do: 'relieve' as const, bend: state.bend, ...ifOpened(state, over) }] : []),
		...tweaks.map(({ bend, do: _, by: __, expect, chance, ...outcome }) => ({
			do: 'reopen' as const,
			bend,
			...outcome,
		})),
	];
	const best = options.reduce((a, b) => (b.left < a.left ? b : a));
	return best.within && !bad ? null : { best, stock: stockOf(state) };
}

/** True where the best is so far off that nobody would call it the tube of the drawing. */
export function isHopeless({ endOffset, endAngle, within }: Outcome, piece: number): boolean {
	return !within && (endAngle > ANOTHER_DIRECTION || endOffset > ANOTHER_PLACE * piece);
}

/** What is still straight: raw lengths from the raw start end on, the last one behind the last bend that was pulled. */
function stockOf(state: State): Stock {
	const pulled = state.bends.findLastIndex((bend) => bend.pulls.length > 0) + 1;
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const behind = Math.max(0, state.piece - endBefore(state, pulled + 1));
	const straights = [at(shape.straights, 0) + trimStart, ...shape.straights.slice(1, pulled), behind];
	return { straights, behind, again: behind >= state.design.cut };
}

/** What can be cut from a tube that is given up, in a sentence. */
export function stockInWords({ straights, behind, again }: Stock, units: string): string {
	const anew = again ? ', enough to begin the whole tube anew' : '';
	return `Straight and good for use: ${show(behind, 2)} ${units} behind the last bend${anew}, ${show(at(straights, 0), 2)} ${units} before the first.`;
}

/** What is missed, worst first, in a sentence. */
export function residualsInWords(state: State, { endOffset, endAngle, shape, checks }: Outcome): string {
	const { units, tolerance } = state.start.job;
	const outside = state.design.checks.flatMap(({ check, design }) => {
		const value = checks.find(({ name }) => name === check.name)?.value ?? design;
		const off = Math.abs(value - design);
		if (off <= check.tolerance) return [];
		const unit = checkUnit(check.kind, units);
		return [`check ${check.name} ${show(off)}${unit} off (may be ${show(check.tolerance)}${unit})`];
	});
	const end = `the far end ${show(endOffset)} ${units} from its place and ${show(endAngle, 2)} degrees from its direction`;
	const corner = `the corner of bend ${shape.bend} ${show(shape.off)} ${units} from its place (may be ${show(tolerance.shape)} ${units})`;
	return [end, ...(shape.off > tolerance.shape ? [corner] : []), ...outside].join(', ');
}
