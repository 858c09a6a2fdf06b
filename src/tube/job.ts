/**
 * The job as the pure rooms see it: one tube, its tooling, its shape and what it must measure.
 * Every length is in the job's own unit, every angle in degrees. Made from a job file by `job/`,
 * where every fault has already been refused: the pure rooms trust these values.
 */
import type { Units } from '../units/units.ts';

export type { Units };

/** Yield strength and elastic modulus, in ksi (MPa in a job in mm). */
export interface Material {
	name: string;
	yield: number;
	modulus: number;
}

export interface Tooling {
	/** The names under which springback is learned. */
	bender: string;
	die: string;
	/** Center-line radius of the die. */
	clr: number;
	/** Finished radius over the die's, from a test piece; null where nobody has measured it: the expected one then holds. */
	growth: number | null;
	/** Part by which an arc comes out longer than the straight tube it was made from. */
	stretch: number;
	clamp: number;
	follow: number;
	/** How far past the die's index line the bend really starts. */
	markOffset: number;
	maxAngle: number;
	dialStep: number;
	/** The tape's division. */
	tape: number;
	/** Height of the die's plane above the floor; null: not checked. */
	floor: number | null;
	/** Further dies of the same bender by their names, each with what it has that the job's own die has not. */
	dies?: Readonly<Record<string, Partial<DieFields>>>;
}

/** What a die may have of its own. */
export type DieFields = Omit<Tooling, 'bender' | 'die' | 'dialStep' | 'tape' | 'dies'>;

export interface Bend {
	/** Tangent to tangent, before the bend. */
	straight: number;
	/** Above 0, below 180. */
	angle: number;
	/** From the bend before's plane, right-hand rule about the direction of travel, in (-180, 180]. */
	rotation: number;
	/** One of `tooling.dies`; absent where it is bent on the job's own die. */
	die?: string;
}

export type Point = readonly [number, number, number];

export type ShapeSource =
	/** `radius`: the center-line radius that the drawing shows; the die's where absent. */
	| { kind: 'bends'; bends: readonly Bend[]; last: number; radius?: number }
	| { kind: 'points'; points: readonly Point[] };

export type EndName = 'start' | 'far';
export type CornerName = { bend: number } | { end: EndName };

/** A straight's start tangent; with `at`, its end tangent, which a job turned end for end measures to. */
export interface StraightPlace {
	straight: number;
	at?: 'end';
}

/** Between what of two straights a width is read. */
export type WidthSurface = 'outside' | 'inside' | 'center';

/** An axis of bend 1: x along straight 1, y toward bend 1's inside, z square to both. */
export type Axis = 'x' | 'y' | 'z';

interface CheckBase {
	name: string;
	tolerance: number;
}
/** `overall` with `at`: along the last bend's axes, as in a job turned end for end. */
export type Check = CheckBase &
	(
		| { kind: 'drop'; from: number; to: { bend: number } | StraightPlace; surface: 'centre' | 'across' }
		| { kind: 'angle'; between: readonly [number, number] }
		| { kind: 'span'; from: CornerName; to: CornerName }
		| { kind: 'out'; plane: readonly [number, number]; to: StraightPlace }
		| { kind: 'width'; from: number; to: StraightPlace; surface: WidthSurface }
		| { kind: 'overall'; axis: Axis; at?: 'end' }
		| { kind: 'ovality'; bend: number }
	);

/** Another tube that a finished end is cut to fit. */
export interface Cope {
	/** The other tube's outside diameter. */
	od: number;
	/** Degrees between the two center lines, opening toward the joint line; 90: square. */
	angle: number;
	/** How far the center lines pass each other: positive to the right of the joint line, looking out of the end. */
	offset: number;
	/**
	 * Where round this tube the joint line lies, in (-180, 180]: from bend 1's plane, right-hand rule about the direction of travel, carried
	 * along the tube by the sum of rotations (as `around` of a mark).
	 */
	turn: number;
}

/** What a finished end meets. */
export interface EndFit {
	cope: Cope;
}

/** How a job differs from its drawing: made for the other hand, begun at the drawing's far end. */
export interface BentAs {
	mirror: boolean;
	/** The drawing's end that is bent first, this job's start end. */
	from: EndName;
}

export interface Tolerance {
	/** Degrees that a made angle may be under and over its target. */
	under: number;
	over: number;
	/** What a length may be off by. */
	length: number;
	/** Degrees. */
	rotation: number;
	/** How far a sharp corner or the far end may end up from the drawing's place. */
	shape: number;
	/** Degrees that the last straight may point off the drawing's. */
	direction: number;
}

export interface Job {
	name: string;
	units: Units;
	tube: {
		material: Material;
		od: number;
		wall: number;
		stock: number | null;
		/** Heat, lot or certificate number; absent where none was given. */
		heat?: string;
	};
	tooling: Tooling;
	shape: ShapeSource;
	trim: { start: number; end: number };
	tolerance: Tolerance;
	/** The part of bends that may come out above the upper tolerance. */
	risk: number;
	/** Whether a bend may be worked back. */
	mayOpen: boolean;
	/** How many of this tube are wanted. */
	quantity: number;
	/** An end that is not named is cut square. */
	ends?: Readonly<Partial<Record<EndName, EndFit>>>;
	checks: readonly Check[];
	notes: string;
	/** Absent where the job is bent as drawn, from its start end. */
	bentAs?: BentAs;
}
