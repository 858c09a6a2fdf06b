/** Steps of the search: each narrows the place to 0.62 of what it was. */
const STEPS = 40;

/**
 * The least value met in closing in on a minimum of `f` in [a, b] by golden sections. J. Kiefer, "Sequential minimax search for a maximum",
 * Proc. Amer. Math. Soc. 4 (1953) 502-506.
 */
export function leastWithin(a: number, b: number, f: (x: number) => number): number {
	return f(placeOfLeast(a, b, f));
}

/** Where that is, after so many steps. */
export function placeOfLeast(a: number, b: number, f: (x: number) => number, steps = STEPS): number {
	const part = (Math.sqrt(5) - 1) / 2;
	let [left, right] = [b - part * (b - a), a + part * (b - a)];
	let [atLeft, atRight] = [f(left), f(right)];
	for (let i = 0; i < steps; i++) {
		if (atLeft < atRight) {
			[b, right, atRight] = [right, left, atLeft];
			left = b - part * (b - a);
			atLeft = f(left);
		} else {
			[a, left, atLeft] = [left, right, atRight];
			right = a + part * (b - a);
			atRight = f(right);
		}
	}
	return atLeft < atRight ? left : right;
}

/**
 * The place of a least value, more sharply than its values tell it, which are alike to the root of what rounding leaves: where the parabola through
 * three places `apart` has its vertex (Press et al., Numerical Recipes, 3rd edition, section 10.3). As found where the values have a corner,
 * whose place they tell as it is; then the vertex lies elsewhere by more than `most`.
 */
export function sharpened(found: number, apart: number, most: number, f: (x: number) => number): number {
	const [below, at, above] = [f(found - apart), f(found), f(found + apart)];
	const by = (apart * (below - above)) / (2 * (below - 2 * at + above));
	return Math.abs(by) <= most ? found + by : found;
}
