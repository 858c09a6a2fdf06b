/** Where something stops being so, by halving: Press et al., Numerical Recipes, 3rd edition, section 9.1.1. */

/**
 * The last place that `holds` and the first that does not, as near to each other as so many halvings of [low, high] bring them or the
 * arithmetic lets them. It holds from `low` up to somewhere and from there on no more; neither end is tried.
 */
export function halved(
	holds: (x: number) => boolean,
	low: number,
	high: number,
	halvings: number,
): [last: number, first: number] {
	let [last, first] = [low, high];
	for (let i = 0; i < halvings; i++) {
		const middle = (last + first) / 2;
		if (middle === last || middle === first) break;
		if (holds(middle)) last = middle;
		else first = middle;
	}
	return [last, first];
}

/** The first whole number above `low` that `holds`; `high` where none below it does. Once one holds, all above it do. */
export function firstWhole(holds: (n: number) => boolean, low: number, high: number): number {
	let [not, first] = [low, high];
	while (first - not > 1) {
		const middle = Math.floor((not + first) / 2);
		if (holds(middle)) first = middle;
		else not = middle;
	}
	return first;
}

const MOST_HALVINGS = 60;

/** The zero of a function that changes sign in (low, high), to the last digit. */
export function zeroBetween(f: (x: number) => number, low: number, high: number): number {
	const rising = f(low) < 0;
	const [last, first] = halved((x) => f(x) < 0 === rising, low, high, MOST_HALVINGS);
	return (last + first) / 2;
}
