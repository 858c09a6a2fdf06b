import { cholesky, solvedBy } from '../maths/cholesky.ts';
import { halved } from '../maths/halving.ts';
import { normalMatrix } from '../maths/least-squares.ts';
import { sumOf } from '../maths/list.ts';
import { dot } from '../maths/matrix.ts';
import { sine } from '../tube/angles.ts';
import type { CorrectionInput, Posed } from './correction-input.ts';
import { type OffRows, offRowsOf } from './edges.ts';
import { posed, shapeUnknowns, type Unknown } from './problem.ts';

type Turned = 'angle' | 'rotation';
const TURNED: readonly Turned[] = ['angle', 'rotation'];

/** How many times dearer changes of angles and of rotations are than they were, in squares. */
type TimesDearer = Readonly<Record<Turned, number>>;

/** A change is made so many times dearer at most, in powers of e; a search for less halves that so often. */
const DEAREST = 10;
const HALVINGS = 24;
/** Dearer angles leave more to rotations, and these more to angles: each is set so often at most. */
const ROUNDS = 3;

/**
 * The correction with changes dearer, and with less weight on what is near its edge, as far as a degree more in the bend made last would else move a
 * bend left by more than `steady`. That is told by the slopes at the drawing, all that is made as it was made: they hardly change with
 * what was measured, so neither do price and weight, and what is found follows without a jump.
 */
export function steadied(input: Posed): Posed {
	const { steady, dear, edges } = input;
	if (steady === undefined || input.made === 0) return input;
	const slopes = slopesAtDrawing(input);
	const times = dearEnough(slopes, steady);
	const steadier = {
		...input,
		dear: {
			straight: dear.straight,
			angle: dear.angle / Math.sqrt(times.angle),
			rotation: dear.rotation / Math.sqrt(times.rotation),
		},
	};
	if (edges === undefined) return steadier;
	const weight = Math.min(...offRowsOf(input).map(lightEnough(slopes, times, steady)));
	return { ...steadier, edges: { ...edges, weight } };
}

/** What the problem's rows do about the drawing. */
interface SlopesThere {
	free: readonly Unknown[];
	/** By the free values, then by what the bend made last comes out by. */
	rows: readonly number[][];
	/** J'J of the free values. */
	normal: readonly number[][];
	/** J'b for each thing that the bend made last comes out by. */
	pushes: readonly number[][];
	/** By how many degrees one unit of a free value turns what follows; 0: a straight. */
	degrees: readonly number[];
}

function slopesAtDrawing(input: Posed): SlopesThere {
	const free = shapeUnknowns(input);
	const all = [...free, ...ofLastMade(input)];
	const rows = posed(input, all).jacobian(all.map((unknown) => unknown.nominal));
	const n = free.length;
	const products = normalMatrix(rows, all.length);
	return {
		free,
		rows,
		normal: products.slice(0, n).map((line) => line.slice(0, n)),
		pushes: products.slice(n).map((line) => line.slice(0, n)),
		degrees: free.map(({ kind, index, dear }) => {
			if (kind === 'straight') return 0;
			return kind === 'angle' ? dear : dear * Math.abs(sine(input.nominal.bends[index]!.angle));
		}),
	};
}

/** Angle and rotation of the bend made last, in degrees. The first bend's rotation turns all of the tube and is none. */
function ofLastMade({ shape, made }: CorrectionInput): Unknown[] {
	const index = made - 1;
	const none = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
	return TURNED.slice(0, index === 0 ? 1 : 2).map((kind) => {
		const now = shape.bends[index]![kind];
		return { kind, index, dear: 1, now, nominal: now, range: none, limits: none };
	});
}

/** How the free values follow each thing that the bend made last comes out by, and the triangle that says so. */
function followed(
	{ free, normal, pushes }: SlopesThere,
	times: TimesDearer,
): { lower: number[][]; answers: number[][] } {
	const lower = cholesky(
		normal.map((line, i) => line.map((value, j) => (i === j ? value + timesOf(times, free[i]!) : value))),
	);
	return { lower, answers: pushes.map((push) => solvedBy(lower, push)) };
}

/** By how many degrees such answers turn a bend left, at most: in its angle, in its rotation. */
function mostTurned({ free, degrees }: SlopesThere, answers: readonly (readonly number[])[]): Record<Turned, number> {
	const most = { angle: 0, rotation: 0 };
	for (const answer of answers)
		for (const [i, { kind }] of free.entries())
			if (kind !== 'straight') most[kind] = Math.max(most[kind], Math.abs(answer[i]!) * degrees[i]!);
	return most;
}

const timesOf = (times: TimesDearer, { kind }: Unknown): number => (kind === 'straight' ? 1 : times[kind]);

function dearEnough(slopes: SlopesThere, steady: number): TimesDearer {
	let times: TimesDearer = { angle: 1, rotation: 1 };
	for (let round = 0; round < ROUNDS; round++) {
		const before = times;
		for (const kind of TURNED) {
			const at = (power: number): TimesDearer => ({ ...times, [kind]: Math.exp(power) });
			const isTooMuch = (power: number) => mostTurned(slopes, followed(slopes, at(power)).answers)[kind] > steady;
			const now = Math.log(times[kind]);
			if (isTooMuch(now)) times = at(halved(isTooMuch, now, DEAREST, HALVINGS)[1]);
		}
		// A round that changes nothing is what every further one would be.
		if (times === before) break;
	}
	return times;
}

/**
 * For a thing, the weight up to the usual one that keeps a degree more from moving a bend left by more than `steady` once it lies near its edge. Its rows R, t times
 * over, move an answer a by Z (1 + t R Z)^-1 t (b - R a), where Z = N^-1 R' and b is what it is pushed by (M. A. Woodbury's formula).
 */
function lightEnough(slopes: SlopesThere, times: TimesDearer, steady: number): (thing: OffRows) => number {
	const { lower, answers } = followed(slopes, times);
	const n = answers[0]!.length;
	return ({ rows, unit, weight }) => {
		const own = rows.map((row) => slopes.rows[row]!.slice(0, n));
		const ways = own.map((row) => solvedBy(lower, row));
		const across = own.map((row) => ways.map((way) => dot(row, way)));
		const short = answers.map((answer, k) => own.map((row, i) => slopes.rows[rows[i]!]![n + k]! - dot(row, answer)));
		const isLight = (tried: number) => {
			const counted = (tried * unit) ** 2;
			const stiff = across.map((line, i) => line.map((value, j) => counted * value + (i === j ? 1 : 0)));
			const stiffer = answers.map((answer, k) => {
				const pulls = solvedBy(cholesky(stiff), short[k]!);
				return answer.map((value, i) => value + counted * sumOf(ways.map((way, row) => way[i]! * pulls[row]!)));
			});
			const { angle, rotation } = mostTurned(slopes, stiffer);
			return Math.max(angle, rotation) <= steady;
		};
		return isLight(weight) ? weight : halved(isLight, 0, weight, HALVINGS)[0];
	};
}
