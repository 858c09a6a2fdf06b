/** Where something stops being so: by halving, as in Press et al., Numerical Recipes, 3rd edition, section 9.1.1; where a function is 0, by lines. */

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

/** A smooth function's zero takes some eight; a zero that is none of one is as near by then as so many halvings bring it. */
const MOST_HALVINGS = 60;

/**
 * The zero of a function that changes sign in (low, high), as near as the arithmetic lets it. By the line between two places of different sign; of
 * a place that stays, half the value is taken: Dowell and Jarratt, A modified regula falsi method, BIT 11 (1971).
 */
export function zeroBetween(f: (x: number) => number, low: number, high: number): number {
	let [stays, at] = [low, high];
	let [ofStays, ofAt] = [f(low), f(high)];
	for (let i = 0; i < MOST_HALVINGS && ofAt !== 0; i++) {
		const next = at - (ofAt * (at - stays)) / (ofAt - ofStays);
		if (next === at || next === stays) return next;
		const ofNext = f(next);
		if (ofNext < 0 === ofAt < 0) ofStays /= 2;
		else [stays, ofStays] = [at, ofAt];
		[at, ofAt] = [next, ofNext];
	}
	return at;
}
