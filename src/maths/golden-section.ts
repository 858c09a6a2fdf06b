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
