import type { Answered } from '../../session/log/answered.ts';
import { answeredWords } from '../answered.ts';
import { pieceWords } from '../batch.ts';
import { foreign } from '../foreign.ts';
import type { Wording } from '../lengths.ts';
import { sentence } from '../sentence.ts';
import { END_MEETS } from '../view-names.ts';

/** What is said beside the questions of a session: of an answer that was kept or refused, of the place where one is, and in leaving. */

export const savedWords = (line: Answered, style: Wording, brief: boolean): string =>
	sentence(`Saved as line ${line.entry}: ${answeredWords(line, style, brief)}`);

export const takenBackWords = (line: Answered, style: Wording): string =>
	sentence(`Taken back: line ${line.entry}, ${answeredWords(line, style, true)}`);

/** An answer is not on the disk. `again`: the same may be tried again; `elsewhere`: the session can go on in another folder. */
export function notSavedHere(why: string, { again, elsewhere }: { again: boolean; elsewhere: boolean }): string {
	const tries = again ? ' What you typed is still here: Enter or + tries again.' : '';
	const folder = elsewhere ? ' To go on in another folder press Esc, then *.' : '';
	return `NOT SAVED: ${why}${tries}${folder}`;
}

/** The session has gone to another folder; `messages`: what its log has to say of that. */
export const rescuedWords = (messages: readonly string[]): string =>
	`${messages.join(' ')} Give the last answer again: it is not saved yet.`;

export const LOOK_FIRST = 'Look at this tube first, then press the key again.';

/** What was typed before a doubt or a refusal could be read. `enter`: whether Enter takes it up. */
export const typedAheadWords = (typed: string, enter: boolean): string =>
	`Typed before you saw this: ${typed}. Not used.${enter ? ' Enter uses it now.' : ''}`;

/** The same behind a refusal that was said. */
export const refusedAndTyped = (refusal: string, typed: string, enter: boolean): string =>
	`${sentence(refusal)} ${typedAheadWords(typed, enter)}`;

/** Where the session that is left is kept, and how it goes on. */
export const farewellWords = (log: string, resume: string): string =>
	`The session is kept: ${foreign(log)}\nTo go on with it: ${foreign(resume)}\n`;

/** Which tube, which piece, which bend: in the order in which a narrow window leaves them out. */
export function whereWords(
	job: string,
	piece: { number: number; wanted: number } | null,
	bend: { bend: number; of: number } | null,
): string[] {
	return [
		job,
		...(piece === null ? [] : [pieceWords(piece)]),
		...(bend === null ? [] : [`bend ${bend.bend} of ${bend.of}`]),
	];
}

/** What stands under the drawing of the tube; `now`: the bend in hand, null once all are made. */
export function pictureWords(
	now: number | null,
	{ asDrawn, apart, meets, views }: { asDrawn: boolean; apart: boolean; meets: boolean; views: string },
): string {
	const what = now === null ? 'the tube' : `made thin, bend ${now} thick, rest dotted`;
	return [
		`${asDrawn ? 'as drawn: ' : ''}${what}`,
		...(apart ? ['the drawing sparse'] : []),
		...(meets ? [END_MEETS] : []),
		'START left',
		...(views === '' ? [] : [views]),
	].join('; ');
}
