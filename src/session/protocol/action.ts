/** What a shell answers, after parsing. Numbers in the job's unit, degrees. */
import type { Plan } from './asks.ts';
import type { EvidenceKind, ReadingKind } from './kinds.ts';

/** The first of two numbers that are one answer: the dial held before it is read after release, the greatest diameter before the least. */
export interface HalfAnswer {
	of: 'loaded' | 'greatest';
	value: number;
}
/** An answer after parsing: one action, perhaps with a note riding on it. Numbers are in the job's units. */
export type Action =
	| { do: 'ready'; pointer?: number; mark?: number; rotation?: number; length?: number }
	/** The tube never left the die. */
	| { do: 'still' }
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
	/** The heat, lot or certificate number of the tube in hand. */
	| { do: 'heat'; heat: string }
	/** A number in hand whose answer is not whole yet; no line of the line mode says it. */
	| { do: 'draft'; draft: HalfAnswer }
	| { do: 'quit' };
/** `action` null: a note alone. */
export interface Answer {
	action: Action | null;
	note?: string;
}
