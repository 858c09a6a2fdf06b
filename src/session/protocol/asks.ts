import type { Estimate } from '../../fit/built-tube.ts';
/**
 * What the session core asks of any shell. Lengths in the job's unit, angles in degrees, rotations in (-180, 180].
 */
import type { Face, TurnWay } from '../../tube/turns.ts';
import type { CautionFact, Reason } from './facts/index.ts';
import type { CheckKind, EvidenceKind, ReadingKind, ToMeasure } from './kinds.ts';

export type { Estimate };

export type Plan = 'new' | 'old';
export type Advice = 'accept' | 'pull' | 'relieve' | 'scrap' | 'reopen' | 'measure';
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
	/** The die it goes into, where a bend of the job names another than its own. */
	die?: string;
	pointer: number;
	plan: Plan;
	was: { target: number; fromStart: number; rotation: number };
	/** It may be answered that the tube never left the die. */
	still?: true;
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
export interface TubeOutcome extends Predicted {
	/** The largest miss in units of its tolerance: far end's and corners' places, its direction, every check. */
	left: number;
	/** Nothing is missed by more than its tolerance. */
	within: boolean;
}
/** A little more pull or relief at a made bend, seated once more. */
export interface Tweak extends TubeOutcome {
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
export interface LeastBad {
	/** The least bad that this piece can still become. */
	best: TubeOutcome & { do: 'accept' | 'relieve' | 'reopen'; bend: number };
	/** What can be cut from it and used again. */
	stock: StockLeft;
}
export interface StockLeft {
	/** Straight tube between bends and at both raw ends, from the start end on, without the trims. */
	straights: number[];
	/** How much straight tube lies behind the last bend made, and whether the whole job can be begun anew from it. */
	behind: number;
	again: boolean;
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
	/** With advice `relieve`: degrees to open by, and the angle to read then. */
	open?: number;
	to?: number;
	limit: boolean;
	reason: Reason[];
	/** What comes of accepting. */
	accepted: TubeOutcome;
	/** Where that does not fit: what going back to a made bend would do, best first. */
	tweaks: Tweak[];
	/** Where nothing makes it fit, or the bend is too far over to be worked back. Programs read it by this name. */
	rescue?: LeastBad;
}
export type Ask = SetAsk | PullAsk | MeasureAsk | ConfirmAsk | CheckAsk | DecideAsk;
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
