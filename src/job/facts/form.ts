import type { NumberWanted, UnitsFault } from '../../units/units-error.ts';
import type { QuestionFact } from './question.ts';

/** What the form finds in an answer before it is in the file. Lengths in the job's unit, angles in degrees. */
export type FormFound =
	| { code: 'rise-and-run'; rise: number; run: number | undefined }
	| { code: 'rise-at'; rise: number; angle: number };

export type FormRight =
	| { code: 'answer'; to: QuestionFact }
	| { code: 'choice' }
	| { code: 'offset'; by: 'run' | 'angle' }
	| { code: 'longer-offset'; by: 'run' | 'angle'; radius: number; short: number; units: string }
	/** What is wrong with the number as it was written. */
	| { code: 'number-as-written'; why: UnitsFault; wanted: NumberWanted };
