/** What the estimate of a tube as built takes in and gives out. */
import type { Frames } from '../tube/frames.ts';
import type { Shape } from '../tube/shape.ts';
import type { Grip } from './grip.ts';

export interface Estimate {
	value: number;
	/** Standard deviation. */
	sd: number;
}

/** What is known of one bend before anything is read on the tube as it lies. Degrees, lengths in the job's unit. */
export interface ToldBend {
	/** From the raw start end; null where only what else is read tells it. */
	mark: Estimate | null;
	/** By pulls, dial and angle finder. */
	angle: Estimate;
	/** As set or as read back. */
	rotation: Estimate;
	/** Largest angle before the bend was opened; null when it never was. */
	relievedFrom: number | null;
	/** The die it was bent on: 0, or absent, the first; k: `further[k - 1]`. */
	die?: number;
}

/** What a die is expected to do, and how far tooling of its kind strays from that. */
export interface ToldTooling {
	/** Finished center-line radius of a bend. */
	radius: number;
	/** Log-normal spread of the radius: shared by all bends of one tube, and from bend to bend. */
	dieSpread: number;
	bendSpread: number;
	stretch: Estimate;
	markOffset: number;
}

/** Something read on the tube as it lies on the bench, its ends uncut. */
export interface TubeReading {
	name: string;
	value: number;
	sd: number;
	/** What it would read on a tube of this shape, without error. */
	of(uncut: Shape, laid?: Frames): number;
	/** What it follows on such a tube, to first order. */
	grips(laid: Frames): Grip[];
	/** Read twice: it stands, and what it contradicts was told wrong. */
	confirmed?: boolean;
	/** A check of the job, which can be read again by its name. */
	check?: true;
}

export interface AsBuiltInput {
	/** The bends made so far, in order from the start end. */
	bends: readonly ToldBend[];
	tooling: ToldTooling;
	/** The same of the other dies that bend this tube. */
	further?: readonly ToldTooling[];
	/** Length of the raw piece. */
	piece: number;
	readings: readonly TubeReading[];
}

/** An unknown of the estimate; `bend` counts from 0 and is null for what all bends of a die share. Dies stand last, then their stretches. */
export interface AsBuiltUnknown {
	kind: 'mark' | 'angle' | 'rotation' | 'radius' | 'die' | 'stretch';
	bend: number | null;
	/** What it is told to be; null where nothing tells it. `radius` and `die` are logarithms of factors. */
	told: Estimate | null;
}

/**
 * What the made part of a tube really is: one joint normal distribution of all unknowns, in the order of `unknowns`. Plain
 * numbers but for what `input` holds.
 */
export interface AsBuilt {
	input: AsBuiltInput;
	unknowns: readonly AsBuiltUnknown[];
	mean: readonly number[];
	covariance: readonly (readonly number[])[];
	/** Readings less what `mean` leads to, in their order. */
	misses: readonly number[];
	/** How each reading follows each unknown, at `mean`. */
	slopes: readonly (readonly number[])[];
}
