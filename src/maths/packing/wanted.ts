/** Pieces by kind, longest first: the length each takes of a stick, the saw's cut in it, and how many there are. */
export interface WantedPieces {
	lengths: readonly number[];
	counts: readonly number[];
}

/** How many of each kind. */
export type Filling = readonly number[];

/** What two sums of the same lengths may differ by. */
export const EQUAL = 1e-9;

/** How many of a length go into what is left of a stick. */
export function timesIn(room: number, length: number): number {
	return Math.floor(room / length + EQUAL);
}

export interface Best {
	filling: Filling;
	/** No filling is worth more. It is what `filling` is worth where all could be looked at. */
	most: number;
}

/** A kind of stick: its length with one cut of the saw, what one costs, and how many there are. */
export interface StickKind {
	room: number;
	cost: number;
	count: number;
}

/** One way to cut one kind of stick. */
export interface CuttingWay {
	stick: number;
	filling: Filling;
}
