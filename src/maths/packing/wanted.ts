/** Pieces by kind, longest first: the length each takes of a stick, the saw's cut in it, and how many there are. */
export interface WantedPieces {
	lengths: readonly number[];
	counts: readonly number[];
}

/** How many of each kind. */
export type Filling = readonly number[];

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
