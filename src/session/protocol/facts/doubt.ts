import type { CheckKind, ReadingKind } from '../kinds.ts';

/** Why a reading is asked again. Lengths in the job's unit, angles in degrees. */
export type DoubtFact =
	| { code: 'off-the-stop'; stop: number; value: number }
	/** Above, or far below, the most that the dial was held at; `inside`: what it would be if it was read on the inside of the bend. */
	| { code: 'above-the-dial' | 'below-the-dial'; value: number; held: number; inside?: number }
	| { code: 'not-expected'; expected: number; sd: number }
	/** A made bend was taken to be another angle. */
	| { code: 'not-as-made'; bend: number; angle: number; value: number }
	| { code: 'turn-off'; asked: number; off: number }
	| { code: 'check-off'; name: string; kind: CheckKind; expected: number; value: number }
	/** What to look at before the check counts: the angle that it goes against most, and the one mark or turn that would explain it. */
	| { code: 'look-at'; kind: CheckKind; bend?: number; angle?: number; slip?: Slip }
	| { code: 'length-off'; expected: number; value: number }
	| { code: 'readings-differ'; values: number[]; most: number }
	/** A common slip that would explain it, and what the number was then; `measure`: how it is told. */
	| { code: 'slip'; slip: NumberSlip; would: number; measure: 'length' | 'angle' }
	/** What was told since explains it. */
	| { code: 'explained-since' };

/** How a number is told wrong: off by a whole inch, ten or a foot, in the other unit, or with its digits typed wrong. */
export type NumberSlip = 'inch' | 'ten' | 'foot' | 'unit' | 'moved' | 'swapped' | 'doubled';

/** A mark or a turn that is another one than was told, by an amount that hands slip by. */
export interface Slip {
	of: 'mark' | 'rotation';
	bend: number;
	was: number;
	would: number;
}

/** What does not count any more, before the next reason. */
export type AsideFact =
	| { code: 'set-aside'; of: ReadingKind; values: number[]; bend?: number; name?: string; kind?: CheckKind }
	| { code: 'check-contradicted'; name: string; kind: CheckKind; value: number };

/** Why two readings are wanted; `part`: how many of the readings here are wrong numbers. */
export type TwiceFact =
	| { code: 'first-measurement' }
	| { code: 'narrow-band' }
	| { code: 'many-pulls'; pulls: number }
	| { code: 'many-wrong'; part: number };
