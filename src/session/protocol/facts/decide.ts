import type { Units } from '../../../units/units.ts';
import type { CheckKind, ToMeasure } from '../kinds.ts';

/** What is missed by taking the tube so: the far end, the corner that is too far off, the checks that are outside. Lengths in the job's unit, degrees. */
export interface Missed {
	endOffset: number;
	endAngle: number;
	/** How far the far end may be from its place and from its direction. */
	endAllowed: { place: number; direction: number };
	corner?: { bend: number; off: number; tolerance: number };
	checks: { name: string; kind: CheckKind; off: number; tolerance: number }[];
}

/** Why that is advised. Angles in degrees, `chance` a part of 1. */
export type DecideFact =
	| { code: 'bend-made'; angle: number; sd: number; target: number }
	| { code: 'bend-inside'; chance: number }
	/** `by`: degrees. */
	| { code: 'bend-short' | 'bend-over'; by: number; chance: number }
	| {
			code:
				| 'pull-again'
				| 'fresh-set-up'
				| 'limit-reached'
				| 'too-far-to-open'
				| 'opened-already'
				| 'opening-forbidden'
				| 'fits-only-opened'
				| 'go-easy-opening';
	  }
	/** Late: probably short, and near enough after so many pulls. */
	| { code: 'near-enough'; pulls: number }
	/** Probably a little short, and near enough: the next division of the dial would pass the tolerance with this chance. */
	| { code: 'next-too-far'; chance: number }
	/** The same, and the tube needs it closer all the same. */
	| { code: 'needed-closer'; chance: number }
	| { code: 'open-by'; by: number; to: number }
	/** Over by too little to be opened for, though the tube would fit then. */
	| { code: 'left-unopened'; to: number }
	| { code: 'checks-outside'; names: string[] }
	/** Outside its own tolerance, and the tube still fits with it; `last`: nothing is left to take it up. */
	| { code: 'taken-as-it-is'; angle: number; target: number; last: boolean }
	| ({ code: 'still-missed' } & Missed)
	/** Chance to fit as the tube is, and after going back. */
	| { code: 'reopen-would'; bend: number; by: number; before: number; chance: number }
	/** It would do by itself, and the tube wants it at `to`, `by` degrees further: chance to fit as it is, and then. */
	| { code: 'touch-more'; by: number; to: number; before: number; chance: number }
	/** The least bad, and how it is come to; `fits`: ends and checks could be met. */
	| { code: 'nearest'; fits: boolean; how: 'accept' | 'relieve' | 'reopen'; bend: number; by?: number }
	| { code: 'give-up' }
	/** What is straight and good for use: behind the last bend, enough for the whole tube or not, and before the first. */
	| { code: 'stock-left'; behind: number; again: boolean; before: number }
	/** One reading is not enough for that; `again`: what else than the bend's angle. */
	| { code: 'measure-first'; bend: number; before: 'scrap' | 'open' | 'go-back' | 'take'; again?: undefined }
	| { code: 'measure-first'; bend: number; before: 'open' | 'go-back'; again: ToMeasure }
	| AgainstFact;

/** What is to be measured again, what it was told or read as, and the check that goes against it: the reading, and how far off the drawing. */
export interface AgainstFact {
	code: 'does-not-go';
	again: ToMeasure;
	value: number;
	/** A mark off by as much as is held on the end of such a tape, and forgotten. */
	burnt?: Units;
	check?: { name: string; kind: CheckKind; reading: number; off: number; tolerance: number };
}
