import { listed } from './listed.ts';
/** A bend where it is named by itself: in front of a row, as a choice. */
export const bendName = (bend: number): string => `bend ${bend}`;

/** Several in a sentence: `bend 2`, `bends 1, 2 and 3`. */
export function bendsNamed(bends: readonly number[]): string {
	return bends.length === 1 ? bendName(bends[0]!) : `bends ${listed(bends)}`;
}

export const bendsFromTo = (first: number, last: number): string =>
	first === last ? `bend ${first}` : `bends ${first} to ${last}`;
