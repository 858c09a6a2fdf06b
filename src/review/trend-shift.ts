import { clamp } from '../maths/scalar.ts';
/**
 * Whether springback has moved: a chart of single sessions takes many of them to show a shift of twice their spread, a cumulated sum does not.
 * Page, Biometrika 41 (1954), with the likelihood ratio of a shift as what is cumulated (Basseville and Nikiforov, Detection of Abrupt
 * Changes, 2.2): sessions that tell much weigh much.
 */

/**
 * How springback may shift by a degree at 45 degrees: by as much at all angles, as where a die wears or the pointer moves, or in proportion to the
 * angle, as other steel does.
 */
export const CAUSES = ['all-angles', 'with-angle'] as const;
export type ShiftCause = (typeof CAUSES)[number];

/** What one session says of a shift of one kind: by how much it departs is told `score` / `information`, give or take 1 / sqrt(information). Degrees. */
export interface Departure {
	score: number;
	information: number;
}

export type Departures = Readonly<Record<ShiftCause, Departure>>;

/** A shift that was found, of the kind that it looks most like. */
export interface Shift {
	cause: ShiftCause;
	/** The first of the sessions that it holds for, and the one at which it was found; counted from 0. */
	from: number;
	found: number;
	/** Degrees at 45 degrees, more springback positive, and how far off that may be. */
	by: number;
	sd: number;
}

/** The shift that is looked for, degrees. */
export const SOUGHT = 1;
/**
 * How large the cumulated logarithm of the likelihood ratio must grow for a shift to be called out, and stay for it to stand. Tuned on seeds from
 * 1,600,000: well under one false alarm in 300 sessions of the usual world, and as many shifts found as that leaves.
 */
const ENOUGH = 6;
const STANDS = 5;
/** One session counts as this many standard deviations at the most: a tube of its own kind, or a wrong number, is not a shift. */
const MOST_SDS = 3;

/** Looks for a shift, up or down, in departures that come in order. */
export class ShiftSeeker {
	readonly #sides = CAUSES.flatMap((cause) => [new ShiftSide(cause, 1), new ShiftSide(cause, -1)]);
	#standing: { side: ShiftSide; found: number } | null = null;

	/**
	 * Takes the next departures, which are those of session `at`; gives the shift that they show. One that was called out by chance does not stand for
	 * long: the next sessions do not bear it out.
	 */
	take(departures: Departures, at: number): Shift | null {
		for (const side of this.#sides) side.take(departures[side.cause], at);
		if (this.#standing !== null && this.#standing.side.sum <= STANDS) this.#standing = null;
		const most = this.#sides.reduce((a, b) => (b.sum > a.sum ? b : a));
		if (this.#standing === null && most.sum > ENOUGH) this.#standing = { side: most, found: at };
		return this.#standing && { found: this.#standing.found, ...this.#standing.side.told() };
	}
}

/** The sum for a shift of one kind to one side: it begins anew wherever it falls to 0. */
class ShiftSide {
	readonly cause: ShiftCause;
	readonly #sign: 1 | -1;
	sum = 0;
	#from = 0;
	#score = 0;
	#information = 0;

	constructor(cause: ShiftCause, sign: 1 | -1) {
		this.cause = cause;
		this.#sign = sign;
	}

	take({ score, information }: Departure, at: number): void {
		if (information <= 0) return;
		const most = MOST_SDS * Math.sqrt(information);
		const told = clamp(score, -most, most);
		if (this.sum === 0) [this.#from, this.#score, this.#information] = [at, 0, 0];
		this.sum = Math.max(0, this.sum + this.#sign * SOUGHT * told - (SOUGHT ** 2 * information) / 2);
		this.#score += score;
		this.#information += information;
	}

	told(): Omit<Shift, 'found'> {
		return {
			cause: this.cause,
			from: this.#from,
			by: this.#score / this.#information,
			sd: 1 / Math.sqrt(this.#information),
		};
	}
}
