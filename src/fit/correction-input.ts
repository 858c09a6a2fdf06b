import type { Frames } from '../tube/frames.ts';
import type { Point } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';
import type { DrawnSide } from './drawn-side.ts';
import type { Grip } from './grip.ts';
import type { FarEnd } from './kinematics.ts';
import type { Stock } from './stock.ts';

/** A check that is not yet past changing. */
export interface FitMeasure {
	name: string;
	design: number;
	tolerance: number;
	/** `at`: the shape as laid out, where that is known. */
	value(shape: Shape, at?: Frames): number;
	/** What it follows on such a shape. */
	grips(at: Frames): Grip[];
	/** Where it reads the same on either side near its design: which side the drawing has; absent: it tells by itself. */
	side?: DrawnSide;
}

export type Bounds = readonly [number, number];

/** What the finished tube is held against: its corners and far end, its last direction in degrees, and each measure. */
export interface Edges {
	shape: number;
	turn: number;
	measures: readonly number[];
	/** What a tolerance beyond the edge counts as, in residuals; absent: as usual. */
	weight?: number;
}

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
	measures: readonly FitMeasure[];
	/** What the far end may be off by: a length, degrees. */
	tolerance: { position: number; direction: number };
	/** A change by this much costs as much as a residual of one tolerance. */
	dear: { straight: number; angle: number; rotation: number };
	/** Read for the free values only, by the index of the straight or bend. Without `rotations` a rotation has no bounds. */
	bounds: { straights: readonly Bounds[]; angles: readonly Bounds[]; rotations?: readonly Bounds[] };
	/** Where the sharp corner of each bend lies in the design, and how far off each may be; absent: corners may lie anywhere. */
	corners?: { places: readonly Point[]; tolerances: readonly number[] };
	/** What is near the edge of these, or beyond it, weighs more; absent: nothing does. */
	edges?: Edges;
	/** By how many degrees a degree more in the bend made last may move a bend left; absent: by any. */
	steady?: number;
	/** Absent: there is as much tube as is wanted. */
	stock?: Stock;
}

/** `ended`: the last straight is no free value, but whatever the rest leaves of this stock. */
export type Posed = CorrectionInput & { ended?: Stock };
