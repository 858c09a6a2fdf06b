import { ofLast, type Problem } from '../maths/least-squares.ts';
import { normalizeRotation, radians } from '../tube/angles.ts';
import { type Frames, frames } from '../tube/frames.ts';
import type { Shape } from '../tube/shape.ts';
import { cornerMoves, cornersOf } from './corner-motion.ts';
import type { Bounds, Posed } from './correction-input.ts';
import { slopesOf } from './grips.ts';
import { type Chain, chainMotion, type Walk, walk } from './kinematics.ts';
import { type MeasurePart, partsOf } from './measure-parts.ts';
import { leftOf, leftOfShape, stockTakenBy } from './stock.ts';

/** One free value. All its numbers are in units of how dear it is, so that the solver's variables are of order one. */
export interface Unknown {
	kind: 'straight' | 'angle' | 'rotation';
	index: number;
	dear: number;
	now: number;
	nominal: number;
	range: Bounds;
	/** The range in the job's own units, so that a value at a bound is that bound to the last digit. */
	limits: Bounds;
}

/** The free values of a correction: straights, then angle and rotation of each bend. */
export function shapeUnknowns({ shape, made, nominal, dear, bounds, ended }: Posed): Unknown[] {
	const unknowns: Unknown[] = [];
	const add = (kind: Unknown['kind'], index: number, now: number, design: number, range: Bounds) => {
		const scale = dear[kind];
		unknowns.push({
			kind,
			index,
			dear: scale,
			now: now / scale,
			nominal: design / scale,
			range: [range[0] / scale, range[1] / scale],
			limits: range,
		});
	};
	const straights = shape.straights.length - (ended ? 1 : 0);
	for (let i = made; i < straights; i++)
		add('straight', i, shape.straights[i]!, nominal.straights[i]!, checkedBounds(bounds.straights[i], 'straight', i));
	for (let i = made; i < shape.bends.length; i++) {
		const [bend, design] = [shape.bends[i]!, nominal.bends[i]!];
		add('angle', i, bend.angle, design.angle, checkedBounds(bounds.angles[i], 'angle', i));
		const range: Bounds = bounds.rotations ? checkedBounds(bounds.rotations[i], 'rotation', i) : [-Infinity, Infinity];
		const center = bounds.rotations ? (range[0] + range[1]) / 2 : design.rotation;
		add('rotation', i, turnNearest(bend.rotation, center), turnNearest(design.rotation, center), range);
	}
	return unknowns;
}

function checkedBounds(range: Bounds | undefined, kind: string, index: number): Bounds {
	if (range !== undefined && range[0] <= range[1]) return range;
	throw new RangeError(
		`bounds for ${kind} ${index + 1}: ${range === undefined ? 'none' : `${range[0]} to ${range[1]}`}`,
	);
}

/** The turn that is the same rotation as `rotation` and nearest to `center`. */
const turnNearest = (rotation: number, center: number) => rotation - 360 * Math.round((rotation - center) / 360);

/** The shape with the free values that the solver has come to. */
export function placed({ shape, ended }: Posed, unknowns: readonly Unknown[], x: readonly number[]): Shape {
	const straights = [...shape.straights];
	const bends = shape.bends.map((bend) => ({ ...bend }));
	for (const [k, { kind, index, dear, range, limits }] of unknowns.entries()) {
		const bound = range.indexOf(x[k]!);
		const value = bound < 0 ? x[k]! * dear : limits[bound]!;
		if (kind === 'straight') straights[index] = value;
		else if (kind === 'angle') bends[index]!.angle = value;
		else bends[index]!.rotation = normalizeRotation(value);
	}
	if (ended) straights[bends.length] = leftOfShape({ straights, bends }, ended);
	return { straights, bends };
}

/**
 * The least-squares problem of a correction. Rows, in order: far end (3), direction (3), the measures (1 each, or 3: `partsOf`), the corners of the bends left
 * (3 each); what each change costs is how far each variable is drawn from the design.
 */
export function posed(input: Posed, unknowns: readonly Unknown[]): Problem {
	const { goal, measures, tolerance, made, corners } = input;
	const lie = ofLast(lying(input, unknowns));
	const parts = measures.flatMap(partsOf);
	const units = [tolerance.position, radians(tolerance.direction)] as const;
	const residuals = (x: readonly number[]) => {
		const { chain, way, laid, shape } = lie(x);
		const rows = goal.end.map((aim, i) => (way.end[i]! - aim) / units[0]);
		for (const [i, aim] of goal.direction.entries()) rows.push((way.direction[i]! - aim) / units[1]);
		if (laid) for (const { off, tolerance: within } of parts) rows.push(off(shape, laid) / within);
		if (corners)
			for (const [k, place] of cornersOf(chain, way, made).entries())
				for (let i = 0; i < 3; i++)
					rows.push((place[i]! - corners.places[made + k]![i]!) / corners.tolerances[made + k]!);
		return rows;
	};
	const jacobian = (x: readonly number[]) => {
		const { chain, way, laid } = lie(x);
		const rows = endRows(input, way, unknowns, units);
		if (laid) rows.push(...measureRows(input, parts, laid, way, unknowns));
		if (corners) rows.push(...cornerRows(cornerMoves(chain, way, made), unknowns, corners.tolerances.slice(made)));
		return rows;
	};
	return {
		residuals,
		jacobian,
		drawnTo: unknowns.map((u) => u.nominal),
		lower: unknowns.map((u) => u.range[0]),
		upper: unknowns.map((u) => u.range[1]),
	};
}

/** How far end and direction go with each unknown: three rows each. */
function endRows(
	{ shape, ended }: Posed,
	way: Walk,
	unknowns: readonly Unknown[],
	[position, turn]: readonly [number, number],
): number[][] {
	const motion = chainMotion(way);
	const last = 6 * shape.bends.length;
	const rows: number[][] = [[], [], [], [], [], []];
	for (const { kind, index, dear } of unknowns) {
		const moves = motion[OF_KIND[kind]];
		const less = ended ? stockTakenBy(kind, shape.bends[index]!.radius, ended.stretch[index]!) : 0;
		for (let row = 0; row < 6; row++) {
			const shorter = less === 0 ? 0 : less * motion.straights[last + row]!;
			rows[row]!.push(((moves[6 * index + row]! - shorter) * dear) / (row < 3 ? position : turn));
		}
	}
	return rows;
}

/** How the corners go with each unknown: three rows a corner. */
function cornerRows(
	moves: ReturnType<typeof cornerMoves>,
	unknowns: readonly Unknown[],
	tolerances: readonly number[],
): number[][] {
	return moves.flatMap((of, k) =>
		[0, 1, 2].map((i) =>
			unknowns.map(({ kind, index, dear }) => (of[OF_KIND[kind]][3 * index + i]! * dear) / tolerances[k]!),
		),
	);
}

/** How the parts of the measures go with each unknown. */
function measureRows(
	{ shape: { bends }, ended }: Posed,
	parts: readonly MeasurePart[],
	laid: Frames,
	way: Walk,
	unknowns: readonly Unknown[],
): number[][] {
	return parts.map(({ grips, tolerance }) => {
		const slopes = slopesOf(grips(laid), way);
		const last = slopes.straights[bends.length]!;
		return unknowns.map(({ kind, index, dear }) => {
			const less = ended ? stockTakenBy(kind, bends[index]!.radius, ended.stretch[index]!) * last : 0;
			return ((slopes[OF_KIND[kind]][index]! - less) * dear) / tolerance;
		});
	});
}

/** A point of the solver as a tube: walked, and where measures follow it laid out. */
interface SolverTube {
	chain: Chain;
	way: Walk;
	shape: Shape;
	laid: Frames | null;
}

function lying(input: Posed, unknowns: readonly Unknown[]): (x: readonly number[]) => SolverTube {
	const chainAt = chains(input, unknowns);
	return (x) => {
		const chain = chainAt(x);
		const way = walk(chain);
		if (input.measures.length === 0) return { chain, way, shape: input.shape, laid: null };
		const shape = placed(input, unknowns, x);
		return { chain, way, shape, laid: frames(shape) };
	};
}

const OF_KIND = { straight: 'straights', angle: 'angles', rotation: 'rotations' } as const;

/** The chain of a point of the solver. The lists are used anew each time: no point is kept. */
function chains({ shape, ended }: Posed, unknowns: readonly Unknown[]): (x: readonly number[]) => Chain {
	const { straights, bends } = shape;
	const chain = {
		straights: [...straights],
		angles: bends.map((bend) => bend.angle),
		rotations: bends.map((bend) => bend.rotation),
		radii: bends.map((bend) => bend.radius),
	};
	return (x) => {
		for (let k = 0; k < unknowns.length; k++) {
			const { kind, index, dear } = unknowns[k]!;
			chain[OF_KIND[kind]][index] = x[k]! * dear;
		}
		if (ended) chain.straights[bends.length] = leftOf(chain, ended);
		return chain;
	};
}
