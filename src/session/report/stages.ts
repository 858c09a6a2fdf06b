/** A pull's readings of the angle: those of what the pull led to, then of the bend each time that it had been opened. */
export function stages({ measured, opened = [] }: Measured): number[][] {
	const from = [0, ...opened];
	return from.map((start, i) => measured.slice(start, from[i + 1]));
}

interface Measured {
	measured: readonly number[];
	/** Before which of `measured`, counted from 0, the bend was opened. */
	opened?: readonly number[];
}
