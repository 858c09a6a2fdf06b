import { meanOf } from './list.ts';
import { dot, type Matrix } from './matrix.ts';

/**
 * A fixed cloud of points in the place of a normal distribution: what becomes of any function of it is read off what becomes of the
 * points. No chance is in it, so that the same tube always gets the same numbers.
 */

/** How many points: a chance is then good to about a hundredth. */
const CLOUD_POINTS = 600;

/** The columns made so far: a cloud of fewer unknowns has the first of them. */
const COLUMNS: number[][] = [];

/**
 * Points of a standard normal distribution of so many unknowns, one row a point: their mean and their covariance are exactly those of
 * the distribution. Multiples of the square roots of primes (R. D. Richtmyer 1951, as used by A. Genz, J. Comp. Graph. Stat. 1 (1992)
 * 141-149), made normal in pairs (G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29 (1958) 610-611), then centered and made orthonormal
 * (modified Gram-Schmidt). Points in opposite pairs do worse: both lie on the same side of a limit that is the same either way.
 */
export function standardCloud(unknowns: number): readonly (readonly number[])[] {
	if (COLUMNS.length < unknowns) addColumns(unknowns);
	const columns = COLUMNS.slice(0, unknowns);
	return Array.from({ length: CLOUD_POINTS }, (_, i) => columns.map((column) => column[i]!));
}

function addColumns(unknowns: number): void {
	const roots = primes(unknowns + (unknowns % 2)).map(Math.sqrt);
	while (COLUMNS.length < unknowns) {
		const [one, other] = roots.slice(COLUMNS.length, COLUMNS.length + 2) as [number, number];
		for (const column of normalPair(one, other)) COLUMNS.push(squared(column, COLUMNS));
	}
}

function normalPair(root: number, other: number): [number[], number[]] {
	const [a, b]: [number[], number[]] = [[], []];
	for (let i = 1; i <= CLOUD_POINTS; i++) {
		const size = Math.sqrt(-2 * Math.log(part(i * root)));
		const turn = 2 * Math.PI * part(i * other);
		a.push(size * Math.cos(turn));
		b.push(size * Math.sin(turn));
	}
	return [a, b];
}

const part = (x: number): number => x - Math.floor(x);

function primes(count: number): number[] {
	const found: number[] = [];
	for (let n = 2; found.length < count; n++) if (found.every((prime) => n % prime !== 0)) found.push(n);
	return found;
}

/** A column less its mean, made square to all before it, and its mean square 1. */
function squared(column: readonly number[], before: readonly (readonly number[])[]): number[] {
	const mean = meanOf(column);
	const rest = column.map((x) => x - mean);
	for (const other of before) {
		const along = meanProduct(rest, other);
		for (let i = 0; i < rest.length; i++) rest[i]! -= along * other[i]!;
	}
	const size = Math.sqrt(meanProduct(rest, rest));
	return rest.map((x) => x / size);
}

const meanProduct = (a: readonly number[], b: readonly number[]): number => dot(a, b) / a.length;

/** The point mean + L z. */
export function spreadTo(mean: readonly number[], lower: Matrix, z: readonly number[]): number[] {
	return mean.map((m, i) => {
		const line = lower[i]!;
		let sum = m;
		for (let j = 0; j <= i; j++) sum += line[j]! * z[j]!;
		return sum;
	});
}
