import { rawDiesOf } from '../../fit/as-built.ts';
import { type RawBend, type RawDie, type RawTube, rawBendEnds, uncutShape } from '../../fit/raw-tube.ts';
import { at } from '../../maths/list.ts';
import { rawArc } from '../../tube/arcs.ts';
import { dieNumbers, diesOf, toolingOfDie } from '../../tube/dies.ts';
import { shapeEnd } from '../../tube/frames.ts';
import type { ArcBend, Shape } from '../../tube/shape.ts';
import { growthOf, type Start } from '../log/start.ts';
import type { BendState, State } from '../log/state.ts';
import type { Design } from '../plan/design.ts';
import type { Numbers } from '../protocol/asks.ts';

/** The tube as it is and is planned, with where it lies in the raw piece. Lengths in the job's unit. */
export interface TubeAtWork {
	shape: Shape;
	/** To cut off at the start end so that straight 1 comes out as designed. */
	trimStart: number;
	/** Raw tube used from the raw start end to the last bend's end tangent. */
	used: number;
	/** To cut off at the far end; below 0 where the piece is short of the last straight by that much. */
	trimEnd: number;
}

type TubeState = Pick<State, 'start' | 'design' | 'bends' | 'piece' | 'built'>;

/** Each made bend as made and every other as in `numbers`, on the raw piece. */
export function rawTube({ start, design, bends, built }: TubeState, numbers: readonly Numbers[]): RawTube {
	const dies = built ? rawDiesOf(built) : diesAsPlanned(start);
	const [first, ...further] = dies;
	const on = dieNumbers(start.job, bends.length);
	return {
		bends: bends.map((bend, i) => {
			const die = at(on, i);
			const laid = i === 0 ? firstRotation(design) : null;
			const raw = rawBend(bend, at(numbers, i), at(dies, die).radius, laid);
			return further.length === 0 ? raw : { ...raw, die };
		}),
		...first!,
		...(further.length === 0 ? {} : { further }),
	};
}

/** What each die is expected to do, before anything is known of this tube. */
export function diesAsPlanned(start: Start): RawDie[] {
	const { job } = start;
	const { value, dies } = growthOf(start);
	return diesOf(job).map((die) => {
		const { clr, stretch, markOffset } = toolingOfDie(job, die);
		return { stretch, markOffset, radius: clr * (dies?.[die]?.value ?? value) };
	});
}

/** The tube is laid with bend 1's plane as the drawing has it: how it lay in the machine does not matter. */
export const firstRotation = (design: Design): number => at(design.shape.bends, 0).rotation;

function rawBend(bend: BendState, planned: Numbers, radius: number, laid: number | null): RawBend {
	const { made, lies } = bend;
	const angle = made?.angle ?? planned.angle;
	return {
		mark: lies?.mark ?? bend.mark ?? planned.fromStart,
		angle,
		rotation: laid ?? lies?.rotation ?? bend.rotation ?? planned.rotation,
		radius: lies?.radius ?? radius,
		wrapped: Math.max(angle, bend.relievedFrom ?? 0),
	};
}

/**
 * The center line with each made bend as made and every other as in `numbers`. An arc keeps the length it was
 * wrapped with: opening it lets its radius grow. The last straight is the one that brings the far end nearest to its
 * designed place, since that is decided only when the end is cut; a short piece ends before it.
 */
export function tubeAtWork(state: TubeState, numbers: readonly Numbers[]): TubeAtWork {
	return cutToFit(state, rawTube(state, numbers));
}

/** A tube with both its ends cut where they belong. */
export function cutToFit({ design, piece }: Pick<State, 'design' | 'piece'>, raw: RawTube): TubeAtWork {
	const { straights, bends } = uncutShape(raw, piece);
	const used = at(rawBendEnds(raw), bends.length);
	const first = at(design.nominal.straights, 0);
	const trimStart = at(straights, 0) - first;
	const inner = [first, ...straights.slice(1, -1)];
	const wanted = straightToEnd(inner, bends, design);
	const left = Math.max(0, piece - used);
	const shape = { straights: [...inner, Math.min(wanted, left)], bends };
	return { shape, trimStart, used, trimEnd: piece - used - wanted };
}

/** Length of the last straight that brings the far end nearest to its designed place, not below 0. */
function straightToEnd(straights: readonly number[], bends: readonly ArcBend[], design: Design): number {
	const { end, direction } = shapeEnd({ straights: [...straights, 0], bends });
	const along = direction.reduce((sum, d, i) => sum + d * (at(design.goal.end, i) - at(end, i)), 0);
	return Math.max(0, along);
}

/** Distance from the raw start end to the end tangent of the bend before a bend (counted from 1); 0 before bend 1. */
export function endBefore(state: TubeState & Pick<State, 'plan'>, bend: number): number {
	return at(rawBendEnds(rawTube(state, state.plan.current)), bend - 1);
}

/** What a bend's die does to its mark and to the tube that its arc takes. */
export type MarkedBy = Pick<RawDie, 'stretch' | 'markOffset'>;

/** Marks, angles and rotations by which a shape is made; marks from the raw start end. `by`: of each bend. */
export function numbersOf(shape: Shape, trimStart: number, by: readonly MarkedBy[]): Numbers[] {
	let end = trimStart;
	return shape.bends.map((bend, i) => {
		const { stretch, markOffset } = at(by, i);
		const from = end + at(shape.straights, i);
		end = from + rawArc(bend.angle, bend.radius, stretch);
		return { fromStart: from - markOffset, angle: bend.angle, rotation: bend.rotation };
	});
}
