import type { NumberWanted, UnitsFault } from '../../../units/units-error.ts';
import type { AskKind, CheckKind, ReadingKind } from '../kinds.ts';
import type { NumberSlip } from './doubt.ts';

/** Where a number stands that another one goes against: the line of the log, or null in the same answer. */
export type LogLine = number | null;

/** Why an answer is not taken. Lengths in the job's unit, angles in degrees. */
export type RefusalFact =
	| MisreadFact
	| {
			code:
				| 'nothing-to-undo'
				| 'finished'
				| 'must-measure'
				| 'measured-already'
				| 'no-correction-yet'
				| 'length-too-late'
				/** With it nothing could be worked out any more. */
				| 'leads-nowhere'
				| 'may-not-open';
	  }
	| { code: 'text-too-long'; most: number }
	| { code: 'other-ask'; ask: AskKind; action: string }
	| { code: 'limit-spent'; maxAngle: number }
	| { code: 'pulled-already'; bend: number }
	| { code: 'seated-already'; bend: number }
	| { code: 'no-such-bend'; bend: number; bends: number }
	| { code: 'not-set-yet' | 'not-made-yet'; bend: number }
	| { code: 'going-back-already'; bend: number }
	/** A tube that is said never to have left the die: it has, or a pull in this set-up can do no more. */
	| { code: 'not-still'; since: 'never-set' | 'taken-out' | 'opened' | 'limit' }
	| { code: 'reading-waits' }
	| { code: 'off-the-piece'; value: number; piece: number }
	| { code: 'no-such-line'; line: number; lines: number }
	| { code: 'line-undone'; line: number }
	| { code: 'no-reading-there'; line: number; of?: string; kinds: ReadingKind[] }
	| { code: 'several-readings-there'; line: number; kinds: ReadingKind[] }
	/** No number of its kind can be that. */
	| { code: 'no-such-number'; value: number; of: ReadingKind; name?: string; kind?: CheckKind; why: NumberFault }
	| ExcludedFact
	| HindranceFact;

export type NumberFault =
	| 'above-0'
	| 'angle-0-to-360'
	| 'dial-to-360'
	| 'turn-to-360'
	| 'ratio-0-to-1'
	| 'not-below-0'
	| 'at-most-100-m';

/** What mechanics excludes, by what else was told of the bend. */
export type ExcludedFact =
	| { code: 'not-pulled-yet'; bend: number }
	| {
			code: 'excluded-by-dial';
			of: 'angle' | 'released';
			value: number;
			bend: number;
			held: number;
			line: LogLine;
			which: 'above' | 'below';
			/** What it is if it was read on the inside of the bend. */
			inside?: number;
			/** In its place the common slip that explains it better, and what the number was then. */
			slip?: { slip: NumberSlip; would: number };
			/** A doubtful dial is being read again. */
			settling: boolean;
	  }
	| { code: 'excludes-told'; of: 'angle' | 'released'; value: number; bend: number; held: number; line: LogLine };

/** Why a made bend cannot be gone back to, or not be changed so. */
export type HindranceFact =
	| { code: 'cannot-open-so-far'; bend: number; by: number }
	| { code: 'machine-ends-before'; bend: number; angle: number }
	| { code: 'floor-in-the-way'; bend: number; depth?: number; floor: number }
	| { code: 'clamp-in-the-way' | 'follow-in-the-way'; bend: number; needs: number; is: number };

/** What could not be read; `place`: the key it stands under. */
export type MisreadFact =
	| { code: 'not-json' | 'not-an-object' | 'empty-answer' | 'note-no-text' | 'why-without-scrap' }
	| { code: 'line-too-long' | 'nested-too-deep' | 'list-too-long'; most: number }
	| { code: 'key-twice'; key: string }
	| { code: 'several-actions'; actions: string[] }
	| { code: 'unknown-action'; keys: string[]; actions: string[] }
	| { code: 'does-not-go-with'; keys: string[]; action: string }
	| { code: 'does-not-belong'; keys: string[]; place: string }
	| { code: 'wants'; place: string; wants: Wanted }
	| { code: 'no-number'; place: string; text: string; fault: UnitsFault; wanted: NumberWanted }
	| { code: 'no-reading-of'; line: number; of: string };

/** What has to stand at a place of an answer. */
export type Wanted =
	| 'true'
	| 'plan'
	| 'do'
	| 'list'
	| 'number'
	| 'ratio'
	| 'whole'
	| 'reason'
	| 'heat'
	| 'amend'
	| 'evidence'
	| 'evidence-kind'
	| 'reopen';
