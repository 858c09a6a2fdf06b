/** A seeded source of random numbers: the same seed gives the same practice, on any machine. */
export interface Draw {
	/** From `low` up to `high`, evenly. */
	uniform(low: number, high: number): number;
	normal(mean: number, sd: number): number;
	/** Student's t with `df` degrees of freedom (a whole number above 2), scaled to this standard deviation about 0. */
	heavy(sd: number, df: number): number;
	/** True with this probability. */
	happens(probability: number): boolean;
}

/**
 * Weyl sequence with a 32-bit finaliser (the mixing of D. Stafford's murmur variants); normals by the method of Box and Muller.
 * `seed` is any whole number.
 */
export function draws(seed: number): Draw {
	let counter = mixed(seed | 0);
	const next = (): number => {
		counter = (counter + 0x9e3779b9) | 0;
		return (mixed(counter) + mixed(counter ^ 0x6a09e667) / 2 ** 32) / 2 ** 32;
	};
	const standard = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
	const heavy = (sd: number, df: number): number => {
		let squares = 0;
		for (let i = 0; i < df; i++) squares += standard() ** 2;
		return (sd * standard() * Math.sqrt(df - 2)) / Math.sqrt(squares);
	};
	return {
		uniform: (low, high) => low + (high - low) * next(),
		normal: (mean, sd) => mean + sd * standard(),
		heavy,
		happens: (probability) => next() < probability,
	};
}

/** A whole number of 32 bits, mixed so that neighbors have nothing in common; not negative. */
function mixed(value: number): number {
	let x = value;
	x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
	x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
	return (x ^ (x >>> 16)) >>> 0;
}
