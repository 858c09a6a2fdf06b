/** Slopes by central differences, whose error is of second order in the step: Abramowitz and Stegun, formula 25.3.21. */

/** Half of what `f` changes by from x - by to x + by: the change that a step `by` makes, to first order. */
export function changeBy(f: (x: number) => number, x: number, by: number): number {
	return (f(x + by) - f(x - by)) / 2;
}

/** How `f` changes with its argument, seen over a step of `by` to either side. */
export const slopeAt = (f: (x: number) => number, x: number, by: number): number => changeBy(f, x, by) / by;

/** How a vector of numbers follows each variable, moved by its own step: one row a number. A step of 0 gives a column of 0. */
export function slopesAt(
	f: (x: readonly number[]) => number[],
	x: readonly number[],
	steps: readonly number[],
): number[][] {
	const columns = steps.map((by, k) => {
		if (by === 0) return null;
		const moved = [...x];
		moved[k] = x[k]! + by;
		const above = f(moved);
		moved[k] = x[k]! - by;
		const below = f(moved);
		return above.map((value, i) => (value - below[i]!) / (2 * by));
	});
	const rows = columns.find((column) => column !== null) ?? f(x);
	return rows.map((_, row) => columns.map((column) => column?.[row] ?? 0));
}
