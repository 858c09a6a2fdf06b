/** Where a text stands under its place. */
export interface PlacedText {
	center: number;
	row: number;
}

/** Texts under their places between 0 and `most`, from left to right: one that would touch its neighbor goes into the next row that is free there. */
export function rowsOf(
	texts: readonly { at: number; width: number }[],
	most: number,
): { rows: number; centers: PlacedText[] } {
	const ends: number[] = [];
	const centers = texts.map(({ at, width }): PlacedText => {
		const left = Math.min(most - width, Math.max(0, at - width / 2));
		const free = ends.findIndex((end) => end <= left);
		const row = free < 0 ? ends.length : free;
		ends[row] = left + width;
		return { center: left + width / 2, row };
	});
	return { rows: Math.max(1, ends.length), centers };
}
