import type { Known } from './known.ts';

/** Why the tube is to be pulled to this stop. Angles in degrees, `chance` a part of 1. */
export type PullFact =
	/**
	 * How far the tube is expected to spring back, and to which angle; `known`: what that is known from; `zero`: where the dial was told to stand
	 * with a straight tube, if not at 0. The stop is the three together.
	 */
	| { code: 'springback-expected'; by: number; to: number; sd: number; known: Known; zero?: number }
	/** How likely the bend then passes its upper tolerance. */
	| { code: 'chance-over'; limit: number; chance: number }
	/** The stop is not beyond what this bend was held at: since the dial was told to stand `by` degrees otherwise, or the bend was opened. */
	| { code: 'dial-moved'; held: number; by: number }
	| { code: 'opened-since'; held: number }
	/** The dial was told and confirmed to stand `by` degrees above where it should: the stop rests on that number alone. */
	| { code: 'dial-far-off'; by: number }
	/** The machine reaches no further. */
	| { code: 'stop-capped' };
