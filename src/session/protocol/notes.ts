/** What the session core tells any shell besides its asks. Lengths in the job's unit, angles in degrees. */
import type { BentAs } from '../../tube/job.ts';
import type { Warning } from '../../tube/warnings.ts';
import type { Ask, Numbers, Predicted } from './asks.ts';
import type { FinishFact, Reason } from './facts/index.ts';
import type { EvidenceKind } from './kinds.ts';

export interface SessionNote {
	note: 'session';
	id: string;
	log: string;
	resumed: boolean;
	job: string;
	changed: string[];
	others: string[];
	/** Which piece of how many, and the heat of its tube, where given. */
	piece?: number;
	quantity?: number;
	heat?: string;
	/** Whether it is cut and marked as the piece before; false where the job has changed since; absent where nothing before it compares. */
	alike?: boolean;
	/** Where cut and marks are held: by how much they would move at most by what was learned since; absent where the tape does not show it. */
	wouldMove?: number;
	/** Hand and end, where it is not bent as drawn. */
	bentAs?: BentAs;
}
export interface WarningsNote {
	note: 'warnings';
	warnings: Warning[];
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
export interface LastBendMends {
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
	after: { bend: number } | { entry: number };
	remaining: (Numbers & { bend: number; was: Numbers })[];
	predicted: Predicted;
	without: Predicted;
}
export interface CorrectedNote extends Correction {
	predicted: Foretold;
	/** The same with the drawing's numbers for all bends left. */
	without: Foretold;
	mend?: LastBendMends;
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
