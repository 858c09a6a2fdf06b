/**
 * What a simulated shop is made of: a knob for everything. Degrees throughout unless it says otherwise; `sd` is a standard
 * deviation, a pair is a range drawn from evenly. None of it is taken from the springback room: a shop must not share its assumptions.
 */
import type { Draw } from './random.ts';

export type DrawRange = readonly [low: number, high: number];
type Spread = { mean: number; sd: number };

/** How the take-up builds up over the first degrees: exponentially, along a ramp, or late, with a bend in it. */
export type Onset = 'exponential' | 'ramp' | 'late';

/** How springback grows with the dial angle; the forms are in `laws.ts`. */
export type Law =
	| { form: 'power' }
	/** The part that springs back saturates over so many degrees. */
	| { form: 'saturating'; over: DrawRange }
	/** More of each degree, by this part, springs back above an angle. */
	| { form: 'kink'; above: DrawRange; extra: DrawRange }
	/**
	 * The moment of a tube that hardens: the die has bent it to its own curvature after so many degrees (`zone`), `curvature` times that at which
	 * yielding begins; `hardening` is the plastic slope over the elastic one.
	 */
	| { form: 'moment'; zone: DrawRange; curvature: DrawRange; hardening: DrawRange };

/**
 * What the hands do with the dial's pointer when the tube is snug: tell what it shows; leave it alone and tell nothing; turn the dial until it shows
 * the number that the program gives, and tell that number, or turn it and tell nothing.
 */
export type PointerHands = 'reads' | 'leaves' | 'sets' | 'setsSilent';

export interface World {
	machine: {
		takeUp: Spread | DrawRange;
		/** Part of the angle that springs back. */
		proportion: DrawRange;
		law: Law;
		/** The part grows with this power of the angle over 90 degrees: a tube that hardens as it is bent. */
		hardening: DrawRange;
		curvature: { sd: number };
		onset: Onset;
		/** Degrees over which the take-up builds up. */
		buildUp: DrawRange;
		/** The dial's lag as a part of the take-up; null: `lag` says it in degrees, whatever the take-up. */
		lagShare: DrawRange | null;
		lag: DrawRange;
		/** The dial's play: after release and before a pull the needle stands anywhere in it. */
		backlash: DrawRange;
		/**
		 * From tube to tube over the day: take-up in degrees, and a factor on the part that springs back. Either way. `walk`: the take-up from bend to
		 * bend, a random walk.
		 */
		drift: { takeUp: DrawRange; proportion: DrawRange; walk: number };
		/** What a bend opens between the look at the dial after release and the angle finder, each pull anew. */
		creep: DrawRange;
	};
	/** One tube against the next: take-up, and a log-normal factor on the part that springs back. */
	tube: { takeUp: number; proportion: number };
	/** How the tube sits in the die. */
	seating: number;
	dial: { division: number; loaded: number; released: number };
	/** `bias`: what this shop's finder always shows too much. */
	finder: { division: number; sd: number; bias: DrawRange };
	operator: {
		/** How near the stop the stroke ends. */
		stopping: number;
		/** Rotations as set. */
		turning: number;
		/** A mark as made, in divisions of the tape. */
		marking: number;
		/** A length of a check as laid off with straight edge and tape, in divisions of the tape. */
		taping: number;
		pointer: PointerHands;
		/** Whether the dial is told after release. */
		readsRelease: boolean;
	};
	/** All that scatters, tubes against each other too, is so many times as large in one shop. */
	scatter: DrawRange;
	/** Parts of keyed numbers that are 2 degrees wrong, and that have two digits changed over. */
	blunders: { off: number; swapped: number };
	/** Degrees of freedom of every error's Student-t distribution; null: normal. */
	tails: number | null;
}

/** A shop as most are (common practice, no source). */
export const USUAL_SHOP: World = {
	machine: {
		takeUp: { mean: 3, sd: 0.6 },
		proportion: [0.02, 0.12],
		law: { form: 'power' },
		hardening: [0, 0],
		curvature: { sd: 0.35 },
		onset: 'exponential',
		buildUp: [4, 10],
		lagShare: [0.3, 0.7],
		lag: [0, 0],
		backlash: [0, 0],
		drift: { takeUp: [0, 0], proportion: [0, 0], walk: 0 },
		creep: [0, 0],
	},
	tube: { takeUp: 0.25, proportion: 0.1 },
	seating: 0.25,
	dial: { division: 0.5, loaded: 0.15, released: 0.2 },
	finder: { division: 0.1, sd: 0.25, bias: [0, 0] },
	operator: { stopping: 0.25, turning: 0.3, marking: 0.4, taping: 0.25, pointer: 'reads', readsRelease: true },
	scatter: [1, 1],
	blunders: { off: 0.02, swapped: 0.01 },
	tails: null,
};

/** Drawn from a range; one without width costs no draw, so that a knob left alone changes nothing else. */
export function drawnWithin([low, high]: DrawRange, draw: Draw): number {
	return low === high ? low : draw.uniform(low, high);
}

/** One shop of this world: its own scatter drawn. */
export function oneShop(world: World, draw: Draw): World {
	const times = drawnWithin(world.scatter, draw);
	if (times === 1) return world;
	const { tube, seating, dial, finder, operator } = world;
	return {
		...world,
		scatter: [1, 1],
		tube: { takeUp: times * tube.takeUp, proportion: times * tube.proportion },
		seating: times * seating,
		dial: { ...dial, loaded: times * dial.loaded, released: times * dial.released },
		finder: { ...finder, sd: times * finder.sd },
		operator: {
			...operator,
			stopping: times * operator.stopping,
			turning: times * operator.turning,
			marking: times * operator.marking,
		},
	};
}

/** Whether his hands on the pointer are followed by a number. */
export function tellsPointer({ operator: { pointer } }: World): boolean {
	return pointer === 'reads' || pointer === 'sets';
}

/** Whether he turns the dial to the number he is given. */
export function setsPointer({ operator: { pointer } }: World): boolean {
	return pointer === 'sets' || pointer === 'setsSilent';
}
