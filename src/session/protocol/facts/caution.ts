import type { BentAs } from '../../../tube/job.ts';

export type GeneralCaution = 'pinch-points' | 'hydraulic-pressure' | 'tube-springing' | 'cut-edges' | 'rule-book';

/** Shown before the first pull of every session, in this order. */
export const GENERAL_CAUTIONS: readonly GeneralCaution[] = [
	'pinch-points',
	'hydraulic-pressure',
	'tube-springing',
	'cut-edges',
	'rule-book',
];

/** Another die than the one that is in the machine (null: nobody has set any yet) goes in; `clr`: its center-line radius. */
export interface ChangeDie {
	code: 'change-die';
	die: string;
	clr: number;
	from: string | null;
}

/** What to mind at a set-up. Lengths in the job's unit, angles in degrees, parts of 1. */
export type CautionFact =
	| { code: GeneralCaution }
	/** Before a bend is opened. */
	| { code: 'go-easy-opening' }
	| { code: 'cut-length'; length: number }
	| ({ code: 'bent-as' } & BentAs)
	/** `die`: on which one, where bends name several. */
	| { code: 'growth-expected'; growth: number; die?: string }
	| ChangeDie
	| { code: 'narrow-band-costs'; under: number; over: number; pulls: number; risk: number; holds: number }
	| { code: 'opposite-face' }
	| { code: 'telling-pays'; nearer: number }
	| { code: 'clamp-room'; needs: number; is: number }
	| { code: 'follow-room'; needs: number; is: number }
	/** What to keep clear of the part beyond the clamp: rounded up, null where it lies in the machine's plane. `floor` where it would hit it. */
	| { code: 'swing'; reach: number; above: number | null; below: number | null; floor: number | null }
	| { code: 'seat-as-before' };
