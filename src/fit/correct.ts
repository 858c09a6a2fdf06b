import { costAt, FLAT_SLOPE, type Flatness, solve } from '../maths/least-squares.ts';
import { angleBetween } from '../tube/angles.ts';
import { frames } from '../tube/frames.ts';
import type { Shape } from '../tube/shape.ts';
import { isInside } from '../tube/tolerance.ts';
import { distance } from '../tube/vector.ts';
import type { CorrectionInput, FitMeasure, Posed } from './correction-input.ts';
import { edged } from './edges.ts';
import type { FarEnd } from './kinematics.ts';
import { placed, posed, shapeUnknowns } from './problem.ts';
import { steadied } from './steady.ts';
import { leftOfShape } from './stock.ts';

export type { CorrectionInput, FitMeasure } from './correction-input.ts';

export interface Prediction {
	/** Distance of the far end from its place in the design. */
	endOffset: number;
	/** Degrees between the last straight and its direction in the design. */
	endAngle: number;
	checks: { name: string; value: number }[];
}

/** A free value, of the straight or bend counted from 1, that lies at its least or greatest; or the last straight, which ends where the piece does. */
export type HeldBound = { of: 'straight' | 'angle' | 'rotation'; at: number; held: 'low' | 'high' } | { of: 'piece' };

export interface CorrectedShape {
	/** The made part as it was, the rest as it should now be bent. */
	shape: Shape;
	/** Half the sum of squared residuals of `shape`, and of the shape as it was planned. */
	cost: number;
	costBefore: number;
	/** Far end, direction and every check are within their tolerance. */
	reached: boolean;
	/** The bounds that the correction is held by. */
	active: HeldBound[];
	endOffset: number;
	endAngle: number;
	/** `residual` is value less design, in units of the tolerance. */
	measures: { name: string; value: number; residual: number }[];
}

/** What a shape would come out as beside the design. */
export function predict(shape: Shape, goal: FarEnd, measures: readonly FitMeasure[]): Prediction {
	const at = frames(shape);
	const { end, direction } = at.straights.at(-1)!;
	return {
		endOffset: distance(end, goal.end),
		endAngle: angleBetween(direction, goal.direction),
		checks: measures.map((measure) => ({ name: measure.name, value: measure.value(shape, at) })),
	};
}

/** What is off by a thousand tolerances need not be known to less than a hundredth of one, nor its last steps gone. */
const AS_FAR_OFF: Flatness = (all) => FLAT_SLOPE * all;

/**
 * Chooses the free straights, angles and rotations so that the far end, its direction and the checks come as near to the design
 * as they can, each in units of its tolerance, and nothing is moved further than needed. The cost is never above that of the
 * plan as it was, as long as that plan keeps the bounds. Where that takes more tube than there is, the piece's end is where the last
 * straight ends, and the rest is chosen for that.
 */
export function correct(input: CorrectionInput, flat: Flatness = AS_FAR_OFF): CorrectedShape {
	const { stock } = input;
	const free = correctedOnce(input, flat);
	if (!stock || free.shape.straights.at(-1)! <= leftOfShape(free.shape, stock)) return free;
	const ended = correctedOnce({ ...input, ended: stock }, flat);
	const least = input.bounds.straights.at(-1)?.[0] ?? 0;
	// A piece that ends before its last leg begins is no tube of this design whatever is chosen.
	return ended.shape.straights.at(-1)! < least ? free : { ...ended, active: [...ended.active, { of: 'piece' }] };
}

function correctedOnce(given: Posed, flat: Flatness): CorrectedShape {
	const input = steadied(given);
	const unknowns = shapeUnknowns(input);
	const problem = edged(posed(input, unknowns), input);
	const now = unknowns.map((u) => u.now);
	const costBefore = costAt(problem, now, problem.residuals(now));
	const best = solve(problem, now, flat);
	const shape = placed(input, unknowns, best.x);
	const { endOffset, endAngle } = predict(shape, input.goal, []);
	const measures = input.measures.map((measure) => {
		const value = measure.value(shape);
		return { name: measure.name, value, residual: (value - measure.design) / measure.tolerance };
	});
	return {
		shape,
		cost: best.cost,
		costBefore,
		reached:
			isInside(endOffset, input.tolerance.position) &&
			isInside(endAngle, input.tolerance.direction) &&
			measures.every((measure) => isInside(measure.residual, 1)),
		active: unknowns.flatMap(({ kind, index }, k) => {
			const held = best.held[k];
			return held ? [{ of: kind, at: index + 1, held }] : [];
		}),
		endOffset,
		endAngle,
		measures,
	};
}
