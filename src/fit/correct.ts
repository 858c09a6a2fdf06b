import type { Point, Units } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';
import { type FarEnd, farEnd, farEndMotion } from './kinematics.ts';
import { type Problem, solve } from './solver.ts';

const DEGREE = Math.PI / 180;

/** A check that is not yet past changing. */
export interface Measure {
	name: string;
	design: number;
	tolerance: number;
	value(shape: Shape): number;
}

export type Range = readonly [number, number];

export interface CorrectionInput {
	/** Bends and straights before `made` as made, the rest as now planned. */
	shape: Shape;
	/**
	 * How many bends are made. They and the straights before them are fixed; straights[made..n] and the angle and rotation of
	 * bends[made..] are free; the radius of a free bend is fixed.
	 */
	made: number;
	/** What a free value is drawn back to: the design. */
	nominal: Shape;
	/** Where the design's far end lies and points, in the first straight's frame. */
	goal: FarEnd;
	measures: readonly Measure[];
	/** What the far end may be off by: a length, degrees. */
	tolerance: { position: number; direction: number };
	/** A change by this much costs as much as a residual of one tolerance. */
	dear: { straight: number; angle: number; rotation: number };
	/** Read for the free values only, by the index of the straight or bend. Without `rotations` a rotation has no bounds. */
	bounds: { straights: readonly Range[]; angles: readonly Range[]; rotations?: readonly Range[] };
}

export interface Prediction {
	/** Distance of the far end from its place in the design. */
	endOffset: number;
	/** Degrees between the last straight and its direction in the design. */
	endAngle: number;
	checks: { name: string; value: number }[];
}

export interface Correction {
	/** The made part as it was, the rest as it should now be bent. */
	shape: Shape;
	/** Half the sum of squared residuals of `shape`, and of the shape as it was planned. */
	cost: number;
	costBefore: number;
	/** Far end, direction and every check are within their tolerance. */
	reached: boolean;
	/** The bounds that the correction is held by, in words. */
	active: string[];
	endOffset: number;
	endAngle: number;
	/** `residual` is value less design, in units of the tolerance. */
	measures: { name: string; value: number; residual: number }[];
}

/** The scales that the method was tried with: tolerances of the far end, and how dear a change is. */
export function scales(units: Units): Pick<CorrectionInput, 'tolerance' | 'dear'> {
	const mm = units === 'mm' ? 1 : 1 / 25.4;
	return {
		tolerance: { position: 0.5 * mm, direction: 0.25 },
		dear: { straight: 10 * mm, angle: 2, rotation: 4 },
	};
}

/** What a shape would come out as beside the design. */
export function predict(shape: Shape, goal: FarEnd, measures: readonly Measure[]): Prediction {
	const { end, direction: t } = farEnd(shape);
	const g = goal.direction;
	const sine = Math.hypot(t[1] * g[2] - t[2] * g[1], t[2] * g[0] - t[0] * g[2], t[0] * g[1] - t[1] * g[0]);
	const cosine = t[0] * g[0] + t[1] * g[1] + t[2] * g[2];
	return {
		endOffset: Math.hypot(...difference(end, goal.end)),
		endAngle: Math.atan2(sine, cosine) / DEGREE,
		checks: measures.map((measure) => ({ name: measure.name, value: measure.value(shape) })),
	};
}

/**
 * Chooses the free straights, angles and rotations so that the far end, its direction and the checks come as near to the design
 * as they can, each in units of its tolerance, and nothing is moved further than needed. The cost is never above that of the
 * plan as it was, as long as that plan keeps the bounds.
 */
export function correct(input: CorrectionInput): Correction {
	const unknowns = listUnknowns(input);
	const problem = posed(input, unknowns);
	const now = unknowns.map((u) => u.now);
	const costBefore = problem.residuals(now).reduce((sum, r) => sum + (r * r) / 2, 0);
	const tries = [now, unknowns.map((u) => u.nominal)].map((start) => solve(problem, start));
	const best = tries.reduce((a, b) => (b.cost < a.cost ? b : a));
	const shape = placed(input, unknowns, best.x);
	const { endOffset, endAngle } = predict(shape, input.goal, []);
	const measures = input.measures.map(({ name, design, tolerance, value }) => {
		const reading = value(shape);
		return { name, value: reading, residual: (reading - design) / tolerance };
	});
	return {
		shape,
		cost: best.cost,
		costBefore,
		reached:
			endOffset <= input.tolerance.position &&
			endAngle <= input.tolerance.direction &&
			measures.every((measure) => Math.abs(measure.residual) <= 1),
		active: unknowns.flatMap(({ kind, index }, k) => {
			const held = best.held[k];
			return held ? [`${kind} ${index + 1} at its ${held === 'low' ? 'least' : 'greatest'}`] : [];
		}),
		endOffset,
		endAngle,
		measures,
	};
}

/** One free value. All its numbers are in units of how dear it is, so that the solver's variables are of order one. */
interface Unknown {
	kind: 'straight' | 'angle' | 'rotation';
	index: number;
	dear: number;
	now: number;
	nominal: number;
	range: Range;
}

function listUnknowns({ shape, made, nominal, dear, bounds }: CorrectionInput): Unknown[] {
	const unknowns: Unknown[] = [];
	const add = (kind: Unknown['kind'], index: number, now: number, design: number, range: Range) => {
		const scale = dear[kind];
		unknowns.push({
			kind,
			index,
			dear: scale,
			now: now / scale,
			nominal: design / scale,
			range: [range[0] / scale, range[1] / scale],
		});
	};
	for (let i = made; i < shape.straights.length; i++)
		add('straight', i, shape.straights[i]!, nominal.straights[i]!, rangeOf(bounds.straights[i], 'straight', i));
	for (let i = made; i < shape.bends.length; i++) {
		const [bend, design] = [shape.bends[i]!, nominal.bends[i]!];
		add('angle', i, bend.angle, design.angle, rangeOf(bounds.angles[i], 'angle', i));
		const range: Range = bounds.rotations ? rangeOf(bounds.rotations[i], 'rotation', i) : [-Infinity, Infinity];
		const centre = bounds.rotations ? (range[0] + range[1]) / 2 : design.rotation;
		add('rotation', i, nearest(bend.rotation, centre), nearest(design.rotation, centre), range);
	}
	return unknowns;
}

function rangeOf(range: Range | undefined, kind: string, index: number): Range {
	if (range !== undefined && range[0] <= range[1]) return range;
	const found = range === undefined ? 'none' : `${range[0]} to ${range[1]}`;
	throw new RangeError(
		`The correction needs bounds for ${kind} ${index + 1}, the least not above the greatest; it was given ${found}.`,
	);
}

/** The turn that is the same rotation as `rotation` and nearest to `centre`. */
const nearest = (rotation: number, centre: number) => rotation - 360 * Math.round((rotation - centre) / 360);
/** In (-180, 180]. */
const wrapped = (rotation: number) => {
	const near = nearest(rotation, 0);
	return near <= -180 ? near + 360 : near;
};

function placed({ shape }: CorrectionInput, unknowns: readonly Unknown[], x: readonly number[]): Shape {
	const straights = [...shape.straights];
	const bends = shape.bends.map((bend) => ({ ...bend }));
	for (const [k, { kind, index, dear }] of unknowns.entries()) {
		const value = x[k]! * dear;
		if (kind === 'straight') straights[index] = value;
		else if (kind === 'angle') bends[index]!.angle = value;
		else bends[index]!.rotation = wrapped(value);
	}
	return { straights, bends };
}

const difference = (a: Point, b: Point): [number, number, number] => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Rows, in order: far end (3), direction (3), the measures, what each change costs. */
function posed(input: CorrectionInput, unknowns: readonly Unknown[]): Problem {
	const { goal, measures, tolerance } = input;
	const turn = tolerance.direction * DEGREE;
	const measured = (x: readonly number[]) => {
		const shape = placed(input, unknowns, x);
		return measures.map((measure) => (measure.value(shape) - measure.design) / measure.tolerance);
	};
	const residuals = (x: readonly number[]) => {
		const { end, direction } = farEnd(placed(input, unknowns, x));
		return [
			...difference(end, goal.end).map((d) => d / tolerance.position),
			...difference(direction, goal.direction).map((d) => d / turn),
			...measured(x),
			...unknowns.map((u, k) => x[k]! - u.nominal),
		];
	};
	const jacobian = (x: readonly number[]) => {
		const motion = farEndMotion(placed(input, unknowns, x));
		const columns = unknowns.map(({ kind, index, dear }, k) => {
			const moves = motion[`${kind}s`][index]!;
			return [
				...moves.end.map((d) => (d * dear) / tolerance.position),
				...moves.direction.map((d) => (d * dear) / turn),
				...slopes(measured, x, k),
				...unknowns.map((_, j) => (j === k ? 1 : 0)),
			];
		});
		return columns[0]!.map((_, row) => columns.map((column) => column[row]!));
	};
	return { residuals, jacobian, lower: unknowns.map((u) => u.range[0]), upper: unknowns.map((u) => u.range[1]) };
}

/** Central differences: near the cube root of what a number can tell, times a variable of order one to a thousand. */
const DIFFERENCE = 1e-4;
function slopes(measured: (x: readonly number[]) => number[], x: readonly number[], k: number): number[] {
	const at = (move: number) => measured(x.map((value, i) => (i === k ? value + move : value)));
	const above = at(DIFFERENCE);
	const below = at(-DIFFERENCE);
	return above.map((value, i) => (value - below[i]!) / (2 * DIFFERENCE));
}
