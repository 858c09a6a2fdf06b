/**
 * What passes between the session core and any shell: the asks, the answers and the notes of the line mode.
 * Lengths in the job's unit, angles in degrees, rotations in (-180, 180].
 */

import type { BentAs } from '../../tube/job.ts';
import type { Face, TurnWay } from '../../tube/turns.ts';
import type { Warning } from '../../tube/warnings.ts';
import type { CautionFact, FinishFact, Reason } from './facts/index.ts';
import type { CheckKind, EvidenceKind, ReadingKind } from './kinds.ts';

export type { CheckKind, EvidenceKind, Face, ReadingKind, TurnWay, Warning };
export type Plan = 'new' | 'old';
export type Advice = 'accept' | 'pull' | 'relieve' | 'scrap' | 'reopen' | 'measure';

export interface Estimate {
	value: number;
	sd: number;
}
export interface AngleEstimate {
	angle: number;
	sd: number;
}

export interface SetAsk {
	ask: 'set';
	entry: number;
	bend: number;
	bends: number;
	target: number;
	design: number;
	seat: number;
	mark: { fromStart: number; fromFarEnd: number; fromLastBend: number | null; tape: string; moved: number };
	rotation: number;
	tubeTurn: { degrees: number; way: TurnWay };
	face: Face;
	around: { degrees: number; length: number };
	pointer: number;
	plan: Plan;
	was: { target: number; fromStart: number; rotation: number };
	cautions: CautionFact[];
}
export interface PullAsk {
	ask: 'pull';
	entry: number;
	bend: number;
	pull: number;
	target: number;
	design: number;
	stop: number;
	lead: number | null;
	expect: AngleEstimate;
	risk: number;
	limit: boolean;
	reason: Reason[];
}
export interface MeasureAsk {
	ask: 'measure';
	entry: number;
	bend: number;
	expect: AngleEstimate;
	readings: 1 | 2;
	/** Why two readings are wanted; none where one is. */
	reason: Reason[];
	/** When the bend is being opened for the first time: what to mind. */
	cautions?: CautionFact[];
}
export interface ConfirmAsk {
	ask: 'confirm';
	entry: number;
	of: ReadingKind;
	reading: number;
	expect: Estimate;
	reason: Reason[];
	bend?: number;
	name?: string;
	/** What it was told as, where it answered no open ask. */
	evidence?: EvidenceKind;
}
export interface CheckAsk {
	ask: 'check';
	entry: number;
	name: string;
	kind: CheckKind;
	expect: Estimate;
	design: number;
	tolerance: number;
	/** How much of trim that is not cut yet is in the expected reading. */
	includes?: number;
}
/** What the finished tube is expected to become by some choice, what is left being corrected for it. */
export interface Outcome extends Predicted {
	/** The largest miss in units of its tolerance: far end's and corners' places, its direction, every check. */
	left: number;
	/** Nothing is missed by more than its tolerance. */
	within: boolean;
}
/** A little more pull or relief at a made bend, seated once more. */
export interface Tweak extends Outcome {
	bend: number;
	do: 'pull' | 'relieve';
	/** Degrees. */
	by: number;
	/** What the bend would be then; `sd` of where a bend seated again lands. */
	expect: AngleEstimate;
	/** Probability that nothing is missed by more than its tolerance. */
	chance: number;
}
/** What becomes of a tube that does not fit as it is. */
export interface Rescue {
	/** The least bad that this piece can still become. */
	best: Outcome & { do: 'accept' | 'relieve' | 'reopen'; bend: number };
	/** What can be cut from it and used again. */
	stock: Stock;
}
export interface Stock {
	/** Straight tube between bends and at both raw ends, from the start end on, without the trims. */
	straights: number[];
	/** How much straight tube lies behind the last bend made, and whether the whole job can be begun anew from it. */
	behind: number;
	again: boolean;
}
/** What is to be read again before anything is built on it: of a bend, or the check of that name. */
export interface ToMeasure {
	kind: 'angle' | 'check' | 'mark' | 'rotation';
	bend?: number;
	name?: string;
}
export interface DecideAsk {
	ask: 'decide';
	entry: number;
	bend: number;
	advice: Advice;
	/** With advice `reopen`: the made bend to go back to; with `measure`: what is to be read again first. */
	of?: number | ToMeasure;
	made: AngleEstimate;
	target: number;
	design: number;
	/** With advice `reopen`: what to do there. */
	how?: 'pull' | 'relieve';
	/** With advice `relieve`: degrees to open by. */
	open?: number;
	limit: boolean;
	reason: Reason[];
	/** What comes of accepting. */
	accepted: Outcome;
	/** Where that does not fit: what going back to a made bend would do, best first. */
	tweaks: Tweak[];
	/** Where nothing makes it fit, or the bend is too far over to be worked back. */
	rescue?: Rescue;
}
export type Ask = SetAsk | PullAsk | MeasureAsk | ConfirmAsk | CheckAsk | DecideAsk;

export interface SessionNote {
	note: 'session';
	id: string;
	log: string;
	resumed: boolean;
	job: string;
	changed: string[];
	others: string[];
	/** Hand and end, where it is not bent as drawn. */
	bentAs?: BentAs;
}
export interface WarningsNote {
	note: 'warnings';
	warnings: Warning[];
}
export interface Numbers {
	fromStart: number;
	angle: number;
	rotation: number;
}
export interface Predicted {
	endOffset: number;
	endAngle: number;
	/** The corner that lies farthest from the drawing's. */
	shape: { bend: number; off: number };
	checks: { name: string; value: number }[];
}
/** How sure a prediction of the whole tube is. `sd` is a give or take: nine in ten true values lie within 1.645 of it from what is told. */
export interface Foretold extends Predicted {
	sd: { endOffset: number; endAngle: number };
	checks: { name: string; value: number; sd: number }[];
	/** Probability that the tube truly fits. */
	chance: number;
}
/** One more measurement: a check by its name, or evidence about a bend. */
export type TellsMost = { kind: 'check'; name: string } | { kind: EvidenceKind | 'angle'; bend: number };
/** What the last bend can still mend, said before the second-last one is made. */
export interface Mend {
	/** The second-last bend. */
	bend: number;
	/** Degrees that it may be off by, either way, and the last bend still brings all within tolerance. */
	upTo: number;
	/** The edge of its own tolerance, and what is left then, the last bend corrected for it. */
	off: number;
	left: Predicted;
}
/** A correction as it is kept: how sure it is, is worked out when it is told. */
export interface Correction {
	note: 'corrected';
	after: { bend: number } | { entry: number } | 'growth';
	remaining: (Numbers & { bend: number; was: Numbers })[];
	predicted: Predicted;
	without: Predicted;
}
export interface CorrectedNote extends Correction {
	predicted: Foretold;
	/** The same with the drawing's numbers for all bends left. */
	without: Foretold;
	mend?: Mend;
}
export interface RefusedNote {
	note: 'refused';
	code: 'not-understood' | 'not-possible' | 'not-saved';
	reason: Reason[];
}
/** Where an end of the finished tube is cut. */
export interface Cut {
	end: 'start' | 'far';
	/** To cut off; below 0 where the leg is short by that much. */
	off: number;
	/** The nearest bend, and the finished leg's length from the end of its arc and from its sharp corner. */
	bend: number;
	fromTangent: number;
	fromCorner: number;
}
export interface DoneNote {
	note: 'done';
	scrapped: boolean;
	/** `made` and `sd` are null for a bend that was never accepted (a scrapped tube). */
	bends: { design: number; target: number; made: number | null; sd: number | null; pulls: number; seats: number }[];
	checks: { name: string; design: number; reading: number | null }[];
	/** Null, as all after it to `shape`, for a scrapped tube with bends that were never made. */
	trim: { start: number; end: number } | null;
	endOffset: number | null;
	endAngle: number | null;
	/** Give or take: nine in ten true values lie within 1.645 of it from what is told. */
	sd: { endOffset: number; endAngle: number } | null;
	/** Probability that the tube truly fits. */
	chance: number | null;
	/** The one more measurement that would say most about it; null too where none says much. */
	tellsMost: TellsMost | null;
	/** The corner that lies farthest from the drawing's. */
	shape: { bend: number; off: number } | null;
	/** Bends whose made angle is outside the drawing's own tolerance. */
	outside: number[];
	/** All is within its tolerance by the estimates and the checks read, and likely enough to be so. */
	fits: boolean;
	log: string;
	/** Start end first; none for a tube that is given up. */
	cuts: Cut[];
	/** What is still to be done and looked at. */
	finish: FinishFact[];
}
export type Note = SessionNote | WarningsNote | CorrectedNote | RefusedNote | DoneNote;
/** One thing a shell shows or prints. */
export type Output = Ask | Note;

/** The first of two numbers that are one answer: the dial held before it is read after release, the greatest diameter before the least. */
export interface Draft {
	of: 'loaded' | 'greatest';
	value: number;
}
/** An answer after parsing: one action, perhaps with a note riding on it. Numbers are in the job's units. */
export type Action =
	| { do: 'ready'; pointer?: number; mark?: number; rotation?: number; length?: number }
	| { do: 'plan'; plan: Plan }
	| { do: 'loaded'; loaded: number; released?: number }
	| { do: 'reseat' }
	| { do: 'angles'; angles: number[] }
	| { do: 'skip' }
	| { do: 'keep' }
	| { do: 'reading'; reading: number }
	| { do: 'accept' }
	| { do: 'pull' }
	| { do: 'relieve' }
	| { do: 'scrap'; why: string }
	| { do: 'undo' }
	| { do: 'amend'; entry: number; reading: number; of?: ReadingKind }
	| { do: 'evidence'; kind: EvidenceKind; bend: number; reading: number }
	| { do: 'reopen'; bend: number; how: 'pull' | 'relieve' }
	/** A number in hand whose answer is not whole yet; no line of the line mode says it. */
	| { do: 'draft'; draft: Draft }
	| { do: 'quit' };
/** `action` null: a note alone. */
export interface Answer {
	action: Action | null;
	note?: string;
}
