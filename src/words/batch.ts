import type { Batch, BatchWalk, NextPiece } from '../session/batch/batch.ts';
import type { Pieces } from '../session/batch/pieces.ts';
import { trimmed } from '../units/format.ts';
import { inHundred } from './chance.ts';
import { counted } from './counted.ts';
import { angle, shortOrOver } from './numbers.ts';

/** Which piece of how many: `piece 3 of 10`. */
export function pieceWords({ number, wanted }: { number: number; wanted: number }): string {
	if (number <= wanted) return `piece ${number} of ${wanted}`;
	return wanted === 1 ? `piece ${number}` : `piece ${number}, ${wanted} wanted`;
}

/** The same behind a name in a list; empty where it is a single tube. */
export function pieceBrief({ piece, quantity = 1 }: { piece?: number; quantity?: number }): string {
	return piece === undefined ? '' : `, ${pieceWords({ number: piece, wanted: quantity })}`;
}

/** How many are made: `3 of 10 made, 1 begun`. */
export function madeWords({ made, begun, wanted }: Pick<Pieces, 'made' | 'begun' | 'wanted'>): string {
	const of = wanted === 1 ? `${made}` : `${made} of ${wanted}`;
	return `${of} made${begun === 0 ? '' : `, ${begun} begun and not finished`}`;
}

/** Behind that, how many were scrapped; empty where none was. */
export const scrappedWords = ({ scrapped }: Pick<Pieces, 'scrapped'>): string =>
	scrapped === 0 ? '' : `, ${scrapped} scrapped`;

/** What the one key for the next piece does. */
export function nextWords(next: NextPiece, wanted: number): string {
	if (next.do === 'begin') return `next: ${pieceWords({ number: next.piece, wanted })}`;
	return next.piece === null
		? 'go on with the unfinished one'
		: `go on with ${pieceWords({ number: next.piece, wanted })}`;
}

/** That a bend walks off, and what to look at; the rule stands in `WALK_RULE`. */
export function walkWords(bend: number, { by, pieces }: BatchWalk): string {
	return `Bend ${bend} walks off: ${angle(Math.abs(by))} ${by > 0 ? 'more' : 'less'} over the last ${pieces} pieces. Look at the die, the slack and the pressure.`;
}

/** By which rule, and how likely it is by chance. */
export function walkRule(walks: readonly BatchWalk[]): string {
	const most = Math.max(...walks.map(({ chance }) => chance));
	return `Rule: Mann's trend test (Econometrica 1945), slope by Sen (1968); ${inHundred(most)} by chance.`;
}

export const pullsWords = ({ pulls }: Batch): string => `${trimmed(pulls, 1)} pulls a piece`;

/** Time at the bender a piece, the middle one of all. */
export function timeWords({ seconds }: Batch): string {
	const minutes = seconds / 60;
	return minutes < 1 ? 'under 1 minute a piece' : `${counted(Math.round(minutes), 'minute')} a piece`;
}

/** An error against the drawing in a column of others: `-0.3`, `0`, `+0.2`. */
export const signed = (error: number): string =>
	`${error < 0 ? '' : '+'}${trimmed(error, 1)}`.replace('+0', '0').replace(/^0\./, '+0.');

/** A mean error against the drawing: `0.3° short`. */
export function meanErrorWords(error: number): string {
	if (Math.abs(error) < 0.05) return 'as drawn';
	return shortOrOver(error);
}
