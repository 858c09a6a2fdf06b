/** A matrix row by row, in plain arrays: as few rows as a handful of unknowns of some dozens of machines need. */
export type Matrix = readonly (readonly number[])[];

// A plain loop: this runs a thousand times for every number that is shown.
export function dot(a: readonly number[], b: readonly number[]): number {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
}

/** matrix . vector */
export function times(matrix: Matrix, vector: readonly number[]): number[] {
	return matrix.map((line) => dot(line, vector));
}
