/**
 * What a simulated shop is made of: a knob for everything. Degrees throughout unless it says otherwise; `sd` is a standard
 * deviation, a pair is a range drawn from evenly.
 */
export type Range = readonly [low: number, high: number];

/** How the take-up builds up over the first degrees: exponentially, along a ramp, or late, with a bend in it. */
export type Onset = 'exponential' | 'ramp' | 'late';

export interface World {
	machine: {
		takeUp: { mean: number; sd: number };
		/** Part of the angle that springs back. */
		proportion: Range;
		/** The part grows with this power of the angle over 90 degrees: a tube that hardens as it is bent. */
		hardening: Range;
		curvature: { sd: number };
		onset: Onset;
		/** Degrees over which the take-up builds up. */
		buildUp: Range;
		/** The dial's lag as a part of the take-up; null: `lag` says it in degrees, whatever the take-up. */
		lagShare: Range | null;
		lag: Range;
		/** The dial's play: after release and before a pull the needle stands anywhere in it. */
		backlash: Range;
		/** From tube to tube over the day: take-up in degrees, and a factor on the part that springs back. Either way. */
		drift: { takeUp: Range; proportion: Range };
	};
	/** One tube against the next: take-up, and a log-normal factor on the part that springs back. */
	tube: { takeUp: number; proportion: number };
	/** How the tube sits in the die. */
	seating: number;
	dial: { division: number; loaded: number; released: number };
	finder: { division: number; sd: number };
	operator: {
		/** How near the stop the stroke ends. */
		stopping: number;
		/** Rotations as set. */
		turning: number;
		/** A mark as made, in divisions of the tape. */
		marking: number;
		/** Whether he tells what the dial reads with the tube snug. */
		readsPointer: boolean;
	};
	/** Parts of keyed numbers that are 2 degrees wrong, and that have two digits changed over. */
	blunders: { off: number; swapped: number };
	/** Degrees of freedom of every error's Student-t distribution; null: normal. */
	tails: number | null;
}

/** A shop as most are (common practice, no source). */
export const USUAL: World = {
	machine: {
		takeUp: { mean: 3, sd: 0.6 },
		proportion: [0.02, 0.12],
		hardening: [0, 0],
		curvature: { sd: 0.35 },
		onset: 'exponential',
		buildUp: [4, 10],
		lagShare: [0.3, 0.7],
		lag: [0, 0],
		backlash: [0, 0],
		drift: { takeUp: [0, 0], proportion: [0, 0] },
	},
	tube: { takeUp: 0.25, proportion: 0.1 },
	seating: 0.25,
	dial: { division: 0.5, loaded: 0.15, released: 0.2 },
	finder: { division: 0.1, sd: 0.25 },
	operator: { stopping: 0.25, turning: 0.3, marking: 0.4, readsPointer: true },
	blunders: { off: 0.02, swapped: 0.01 },
	tails: null,
};

const machine = (change: Partial<World['machine']>): World => ({ ...USUAL, machine: { ...USUAL.machine, ...change } });

/** Shops that no model of ours was made for. */
export const FOREIGN: Readonly<Record<string, World>> = {
	hardening: machine({ hardening: [0.1, 0.4], curvature: { sd: 0 } }),
	backlash: machine({ backlash: [0.3, 1] }),
	'heavy tails': { ...USUAL, tails: 4 },
	drift: machine({ drift: { takeUp: [0.05, 0.15], proportion: [0.005, 0.015] } }),
	'coarse dial': { ...USUAL, dial: { ...USUAL.dial, division: 1 } },
	'ramp onset': machine({ onset: 'ramp', buildUp: [6, 18] }),
	'late onset': machine({ onset: 'late', buildUp: [6, 16] }),
	'free lag': machine({ lagShare: null, lag: [0.3, 3] }),
};
