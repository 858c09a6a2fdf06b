import type { MisreadFact, Wanted } from './facts/index.ts';

/** An answer could not be read. */
export class Unreadable extends Error {
	constructor(readonly fact: MisreadFact) {
		super(fact.code);
	}
}

export function misread(fact: MisreadFact): Unreadable {
	return new Unreadable(fact);
}

export function wants(place: string, what: Wanted): Unreadable {
	return new Unreadable({ code: 'wants', place, wants: what });
}
