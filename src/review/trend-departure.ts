/** What one session says of a shift in springback, against what those before it had taught of the same bender, dies and tube. */
import { cholesky, inverse, solvedBy } from '../maths/cholesky.ts';
import { dot, type Matrix, times } from '../maths/matrix.ts';
import type { Lesson } from '../springback/history.ts';
import { areSameKins, type Kin, MACHINE } from '../springback/kin.ts';
import { kinsOf } from '../springback/lesson.ts';
import { PROPORTION, TAKE_UP } from '../springback/model.ts';
import { machinesOf, priorOn } from '../springback/several-dies.ts';
import type { Departure, Departures, ShiftCause } from './trend-shift.ts';

/** A shift by one degree at 45 degrees, in the unknowns of machine and material; the part that grows with the angle counts at 90. */
const DIRECTIONS: Readonly<Record<ShiftCause, readonly number[]>> = {
	'all-angles': MACHINE.map((unknown) => (unknown === TAKE_UP ? 1 : 0)),
	'with-angle': MACHINE.map((unknown) => (unknown === PROPORTION ? 2 : 0)),
};

/**
 * What is known of one combination, in natural form: exp(-x' information x / 2 + vector' x). Tubes bent on several dies are a combination of their
 * own, with the unknowns of one die after the other.
 */
interface KnownKins {
	kins: readonly Kin[];
	/** What mechanics alone lets one expect. */
	cold: Pick<KnownKins, 'information' | 'vector'>;
	/** Whether a session has taught of it. */
	isTaught: boolean;
	information: number[][];
	vector: number[];
}

/** What sessions have taught so far, by combination; each begins with what mechanics alone lets one expect. */
export class TaughtSoFar {
	readonly #all: KnownKins[] = [];

	/** As if no session had taught anything yet. */
	beginAnew(): void {
		for (const known of this.#all) Object.assign(known, { isTaught: false, ...known.cold });
	}

	/** A lesson's departures from what was taught before it, which the lesson then joins. */
	take(lesson: Lesson): Departures {
		const known = this.#known(kinsOf(lesson));
		// The first of a combination departs from nothing: that a machine is not as mechanics has it is no shift.
		const departures = known.isTaught ? departuresOf(lesson, known) : NO_DEPARTURE;
		known.isTaught = true;
		known.vector = known.vector.map((value, i) => value + lesson.vector[i]!);
		known.information = matrixSum(known.information, lesson.information);
		return departures;
	}

	#known(kins: readonly Kin[]): KnownKins {
		const found = this.#all.find((known) => areSameKins(known.kins, kins));
		if (found) return found;
		const names = kins.map(({ die }) => die);
		const cold = machinesOf(priorOn(kins, DIAL_STEP), names);
		const information = inverse(cold.cov);
		const expected = { information, vector: times(information, cold.mean) };
		const fresh = { kins, cold: expected, isTaught: false, ...expected };
		this.#all.push(fresh);
		return fresh;
	}
}

/** Of no consequence here: no stop is asked for. */
const DIAL_STEP = 0.5;

const NO_DEPARTURE: Departures = {
	'all-angles': { score: 0, information: 0 },
	'with-angle': { score: 0, information: 0 },
};

/**
 * The likelihood of a shift along a direction, machine and tube integrated out: with a session's readings x ~ N(y, L^-1) of y = known +
 * shift and known ~ N(m, P), the shift's weight is (L^-1 + P)^-1 = L - L (L + P^-1)^-1 L, which needs no inverse of a lesson that does not tell
 * of all unknowns.
 */
function departuresOf({ information, vector }: Lesson, known: KnownKins): Departures {
	const both = cholesky(matrixSum(information, known.information));
	const expected = solvedBy(cholesky(known.information), known.vector);
	const along = (cause: ShiftCause): Departure => {
		const direction = known.kins.flatMap(() => DIRECTIONS[cause]);
		const told = times(information, direction);
		const held = solvedBy(both, told);
		const weight = times(information, held).map((value, i) => told[i]! - value);
		return {
			score: dot(direction, vector) - dot(held, vector) - dot(weight, expected),
			information: dot(direction, weight),
		};
	};
	return { 'all-angles': along('all-angles'), 'with-angle': along('with-angle') };
}

function matrixSum(a: Matrix, b: Matrix): number[][] {
	return a.map((line, i) => line.map((value, j) => value + b[i]![j]!));
}
