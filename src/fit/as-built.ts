import { inverse } from '../maths/cholesky.ts';
import { slopesAt } from '../maths/differences.ts';
import { ofLast, type Problem, solve } from '../maths/least-squares.ts';
import { times } from '../maths/matrix.ts';
import { frames } from '../tube/frames.ts';
import type { AsBuilt, AsBuiltInput, AsBuiltUnknown, Estimate, ToldTooling, TubeReading } from './built-tube.ts';
import { type RawBend, type RawDie, type RawTube, uncutShape } from './raw-tube.ts';
import { type Lying, readingSlopes } from './reading-slopes.ts';
import { type Suspect, suspectsOf } from './suspects.ts';

/** Where nothing tells a mark, its unit of variation: a length of this part of the piece. */
const UNTOLD = 1e-3;

const toolingsTold = ({ tooling, further = [] }: AsBuiltInput): ToldTooling[] => [tooling, ...further];

export function asBuiltUnknowns(input: AsBuiltInput): AsBuiltUnknown[] {
	const dies = toolingsTold(input);
	return [
		...input.bends.flatMap(({ mark, angle, rotation, die = 0 }, bend): AsBuiltUnknown[] => [
			{ kind: 'mark', bend, told: mark },
			{ kind: 'angle', bend, told: angle },
			{ kind: 'rotation', bend, told: rotation },
			{ kind: 'radius', bend, told: { value: 0, sd: dies[die]!.bendSpread } },
		]),
		...dies.map(({ dieSpread }): AsBuiltUnknown => ({ kind: 'die', bend: null, told: { value: 0, sd: dieSpread } })),
		...dies.map(({ stretch }): AsBuiltUnknown => ({ kind: 'stretch', bend: null, told: stretch })),
	];
}

const PLACES = { mark: 0, angle: 1, rotation: 2, radius: 3 } as const;

/** Place of an unknown in the estimate's vectors. */
export const unknownAt = (kind: keyof typeof PLACES, bend: number): number => 4 * bend + PLACES[kind];

/** The tube that a vector of unknowns stands for; without one, the likeliest. */
export function rawTubeOf({ input, mean }: Pick<AsBuilt, 'input' | 'mean'>, x: readonly number[] = mean): RawTube {
	const [first, ...further] = rawDiesOf({ input, mean: x }) as [RawDie, ...RawDie[]];
	const bends = input.bends.map(({ relievedFrom, die }, i): RawBend => {
		const angle = x[unknownAt('angle', i)]!;
		const bend = {
			mark: x[unknownAt('mark', i)]!,
			angle,
			rotation: x[unknownAt('rotation', i)]!,
			radius: (die ? further[die - 1]! : first).radius * Math.exp(x[unknownAt('radius', i)]!),
			wrapped: Math.max(angle, relievedFrom ?? 0),
		};
		return die === undefined ? bend : { ...bend, die };
	});
	const tube = { bends, stretch: first.stretch, markOffset: first.markOffset, radius: first.radius };
	return further.length === 0 ? tube : { ...tube, further };
}

/** What each die of the tube does, in their order, by a vector of unknowns. */
export function rawDiesOf({ input, mean: x }: Pick<AsBuilt, 'input' | 'mean'>): RawDie[] {
	const dies = toolingsTold(input);
	const first = x.length - 2 * dies.length;
	return dies.map(({ radius, markOffset }, k) => ({
		stretch: x[first + dies.length + k]!,
		markOffset,
		radius: radius * Math.exp(x[first + k]!),
	}));
}

/** Part of an unknown's unit by which it is moved to see what follows: differences of second order, near the best for doubles. */
const DIFFERENCE = 1e-3;

export const unknownScales = (unknowns: readonly AsBuiltUnknown[], piece: number): number[] =>
	unknowns.map(({ told }) => told?.sd ?? UNTOLD * piece);

/**
 * The joint estimate of marks, angles, rotations, radii and stretch from what was told of each and from all readings: the
 * posterior mean by Gauss-Newton, each told value and each reading weighed by its own error, and the covariance as the inverse
 * of the normal matrix there (A. Gelb ed., Applied Optimal Estimation, 1974, section 2.2: weighted least squares). `plain`: the same
 * estimate with no reading taken to stand, where that is known.
 */
export function estimateAsBuilt(input: AsBuiltInput, plain = estimateWith(input, asBuiltUnknowns(input))): AsBuilt {
	let found: AsBuilt = { ...plain, input };
	for (let round = 0; round < MOST_ROUNDS && input.readings.some(({ confirmed }) => confirmed); round++) {
		const unknowns = released(found);
		if (unknowns === null) break;
		found = estimateWith(input, unknowns);
	}
	return found;
}

/** A second gross error is looked for once the first has been given up, no further. */
const MOST_ROUNDS = 2;
/** Further off than this many standard deviations is a gross error; those as far off within a part of that may be it as well. */
export const GROSS = 4;
const AS_FAR = 0.95;

/** What can be wrong of a bend by so much, degrees; further off no dial and no eye lets pass. A mark lies on the piece. */
const MOST_WRONG = { angle: 20, rotation: 180 };

function canBe({ kind, value, would }: Suspect, piece: number): boolean {
	const most = kind === 'angle' || kind === 'rotation' ? MOST_WRONG[kind] : piece;
	return Math.abs(would - value) <= most;
}

/**
 * Where readings that stand contradict what was told of a bend, that was wrong: whatever may be it is told so much more loosely. Null
 * where nothing is contradicted, or nothing that can be explains it.
 */
function released(built: AsBuilt): AsBuiltUnknown[] | null {
	const told = suspectsOf(built).filter((each) => each.kind !== 'reading' && canBe(each, built.input.piece));
	const most = told[0]?.off ?? 0;
	if (most < GROSS) return null;
	const blamed = told.filter(({ off }) => off >= AS_FAR * most);
	return built.unknowns.map((unknown) => {
		const by = blamed.find(({ kind, bend }) => kind === unknown.kind && bend === unknown.bend);
		const { told: was } = unknown;
		return by && was ? { ...unknown, told: { ...was, sd: Math.hypot(was.sd, by.would - by.value) } } : unknown;
	});
}

function estimateWith(input: AsBuiltInput, unknowns: readonly AsBuiltUnknown[]): AsBuilt {
	const units = unknownScales(unknowns, input.piece);
	const start = unknowns.map(({ told, bend }) => told?.value ?? untoldMark(input, bend!));
	const valuesAt = (u: readonly number[]) => u.map((step, k) => start[k]! + step * units[k]!);
	const lying = ofLast((u: readonly number[]) => lyingAt(input, valuesAt(u)));
	const problem: Problem = {
		residuals: (u) => input.readings.map(missed(readsOn(input, lying(u)))),
		jacobian: (u) =>
			slopesOn(input, lying(u)).map((row, i) => row.map((slope, k) => (slope * units[k]!) / input.readings[i]!.sd)),
		drawnTo: unknowns.map(({ told }) => (told ? 0 : null)),
		lower: start.map(() => -Infinity),
		upper: start.map(() => Infinity),
	};
	const { x: steps, matrix } = solve(
		problem,
		start.map(() => 0),
	);
	const mean = valuesAt(steps);
	const found = lyingAt(input, mean);
	const now = readsOn(input, found);
	return {
		input,
		unknowns,
		mean,
		// Each unknown is told within its unit, so that the matrix is 1 and squares: where slopes are steep, rounding takes more than that 1.
		covariance: inverse(matrix, 1).map((row, i) => row.map((value, j) => value * units[i]! * units[j]!)),
		misses: input.readings.map(({ value }, i) => value - now[i]!),
		slopes: slopesOn(input, found),
	};
}

function lyingAt(input: AsBuiltInput, x: readonly number[]): Lying {
	const tube = rawTubeOf({ input, mean: x });
	const uncut = uncutShape(tube, input.piece);
	return { tube, uncut, laid: frames(uncut) };
}

const missed =
	(now: readonly number[]) =>
	({ value, sd }: TubeReading, i: number): number =>
		(now[i]! - value) / sd;

function readsOn({ readings }: AsBuiltInput, { uncut, laid }: Lying): number[] {
	return readings.map((reading) => reading.of(uncut, laid));
}

/** How each reading follows each unknown, in their order. */
function slopesOn(input: AsBuiltInput, lying: Lying): number[][] {
	const grips = input.readings.map((reading) => reading.grips(lying.laid));
	const dies = toolingsTold(input).map((_, die) => die);
	return readingSlopes(lying, grips).map((bends) => {
		const shared = (of: 'radius' | 'stretch') =>
			dies.map((die) => bends.reduce((sum, bend, i) => ((input.bends[i]!.die ?? 0) === die ? sum + bend[of] : sum), 0));
		const own = bends.flatMap(({ mark, angle, rotation, radius }) => [mark, angle, rotation, radius]);
		return [...own, ...shared('radius'), ...shared('stretch')];
	});
}

/** A start for a mark that nothing tells: behind the marks that are told before it. */
function untoldMark({ bends, piece }: AsBuiltInput, bend: number): number {
	const before = bends.slice(0, bend).findLast(({ mark }) => mark !== null)?.mark?.value ?? 0;
	return before + (piece - before) / 2;
}

/** Mean and standard deviation of an angle, mark, rotation or logarithm of a radius factor. `bend` counts from 0. */
export function marginal(built: AsBuilt, kind: 'mark' | 'angle' | 'rotation' | 'radius', bend: number): Estimate {
	const place = unknownAt(kind, bend);
	return { value: built.mean[place]!, sd: Math.sqrt(built.covariance[place]![place]!) };
}

/**
 * What any measures of the tube come to: `f` takes the made part (to which it may add bends still to come) and gives numbers;
 * their means, to first order, and their covariance.
 */
export function spreadOf(built: AsBuilt, f: (tube: RawTube) => number[]): { mean: number[]; covariance: number[][] } {
	const steps = unknownScales(built.unknowns, built.input.piece).map((unit) => unit * DIFFERENCE);
	const rows = slopesAt((x) => f(rawTubeOf(built, x)), built.mean, steps);
	const along = rows.map((row) => times(built.covariance, row));
	return {
		mean: f(rawTubeOf(built)),
		covariance: rows.map((row) => times(along, row)),
	};
}
