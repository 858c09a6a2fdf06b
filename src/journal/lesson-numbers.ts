/** A lesson as a fixed count of numbers. */

import { eigen } from '../maths/eigen.ts';
import { ROUNDING } from '../maths/scalar.ts';
import type { Lesson } from '../springback/history.ts';
import { MACHINE } from '../springback/kin.ts';
import { type Scatter, TALLY_KINDS } from '../springback/scatter.ts';

const UNKNOWNS = MACHINE.length;

/** How many numbers a lesson has. */
export const LESSON_NUMBERS = 4 + UNKNOWNS + UNKNOWNS ** 2 + 2 * TALLY_KINDS.length;

/** What a lesson says, apart from whose it is. */
export type ToldLesson = Omit<Lesson, 'kin' | 'at' | 'session'>;

/** Puts a lesson's numbers into `numbers` from place `at`; of several dies as many as of one, which tell nothing by themselves. */
export function putLesson(
	{ pulls, readings, vector, information, scatter, zero, right }: ToldLesson,
	numbers: Float64Array,
	at: number,
): void {
	const tallies = TALLY_KINDS.flatMap((kind) => [scatter[kind].sum, scatter[kind].count]);
	const first = information.slice(0, UNKNOWNS).flatMap((line) => line.slice(0, UNKNOWNS));
	const all = [pulls, readings, ...vector.slice(0, UNKNOWNS), ...first, ...tallies, right, zero ?? Number.NaN];
	if (all.length !== LESSON_NUMBERS) throw new RangeError(`A lesson has ${LESSON_NUMBERS} numbers, not ${all.length}.`);
	numbers.set(all, at);
}

/** Whether these can be a lesson's: so many, all finite but the last, and none less than nothing that cannot be. */
export function isOfALesson(numbers: Float64Array): boolean {
	if (numbers.length !== LESSON_NUMBERS || !numbers.subarray(0, -1).every(Number.isFinite)) return false;
	const { pulls, readings, information, right } = lessonAt(numbers, 0);
	return Math.min(pulls, readings, right) >= 0 && isInformation(information);
}

/** Whether readings can have told so much: a square of finite numbers, the same both ways, that no reading could have made less than nothing. */
export function isInformation(information: readonly (readonly number[])[]): boolean {
	const values = eigen(information).map(({ value }) => value);
	const nothing = ROUNDING * Math.max(...values);
	const isSymmetric = information.every((line, i) =>
		line.every((x, j) => Math.abs(x - information[j]![i]!) <= nothing),
	);
	return isSymmetric && Math.min(...values) >= -nothing;
}

/** The lesson whose numbers begin at place `at`. */
export function lessonAt(numbers: Float64Array, at: number): ToldLesson {
	const vectorAt = at + 2;
	const matrixAt = vectorAt + UNKNOWNS;
	const talliesAt = matrixAt + UNKNOWNS ** 2;
	const list = (from: number) => [...numbers.subarray(from, from + UNKNOWNS)];
	const tallies = TALLY_KINDS.map((kind, i) => {
		return [kind, { sum: numbers[talliesAt + 2 * i]!, count: numbers[talliesAt + 2 * i + 1]! }];
	});
	const zero = numbers[at + LESSON_NUMBERS - 1]!;
	return {
		...(Number.isNaN(zero) ? {} : { zero }),
		right: numbers[at + LESSON_NUMBERS - 2]!,
		pulls: numbers[at]!,
		readings: numbers[at + 1]!,
		vector: list(vectorAt),
		information: Array.from({ length: UNKNOWNS }, (_, i) => list(matrixAt + i * UNKNOWNS)),
		scatter: Object.fromEntries(tallies) as Scatter,
	};
}
