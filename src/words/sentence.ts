import { capital } from '../units/format.ts';

/** With a full stop, unless it ends in a mark of its own. */
export function sentence(text: string): string {
	return /[.:?!]$/.test(text) ? text : `${text}.`;
}

/** What a list says of one of its rows, standing by itself. */
export const wholeSentence = (phrase: string): string => sentence(capital(phrase));
