/** A lesson as the line that ends a sitting has it: only what does not follow from the session's first line. */
import { kinOf } from '../session/estimate/kin-of-job.ts';
import { isCount } from '../session/log/form/is.ts';
import type { Start } from '../session/log/start.ts';
import type { Lesson } from '../springback/history.ts';
import { diesOf, hasSeveralDies } from '../tube/dies.ts';
import type { Job } from '../tube/job.ts';
import { isInformation, isOfALesson, LESSON_NUMBERS, lessonAt, putLesson } from './lesson-numbers.ts';

export interface WrittenLesson {
	/** As `lesson-numbers` has them. A number that there is none of is null. */
	readonly numbers: readonly (number | null)[];
	/** Where the job has several dies: those that it tells of, with the pulls on each, and what they told together. */
	readonly dies?: readonly { die: string; pulls: number }[];
	readonly vector?: readonly number[];
	readonly information?: readonly (readonly number[])[];
}

export function writtenLesson(lesson: Lesson, job: Job): WrittenLesson {
	const numbers = new Float64Array(LESSON_NUMBERS);
	putLesson(lesson, numbers, 0);
	const one = { numbers: Array.from(numbers, (number) => (Number.isNaN(number) ? null : number)) };
	if (!hasSeveralDies(job)) return one;
	const { kin, pulls, besides = [], vector, information } = lesson;
	const dies = [{ kin, pulls }, ...besides].map((on) => ({ die: on.kin.die, pulls: on.pulls }));
	return { ...one, dies, vector, information };
}

/** The lesson of the session of this start; null where what is written has not the form of one. */
export function lessonWritten(written: unknown, { job, at, id }: Start): Lesson | null {
	if (typeof written !== 'object' || written === null) return null;
	const { numbers, dies, vector, information } = written as Partial<Record<keyof WrittenLesson, unknown>>;
	if (!isNumbers(numbers) || !isOfALesson(floatsOf(numbers))) return null;
	const told = lessonAt(floatsOf(numbers), 0);
	if (!hasSeveralDies(job)) return { kin: kinOf(job), at, session: id, ...told };
	if (!isDies(dies, job)) return null;
	const joint = jointOf(vector, information, dies.length * told.vector.length);
	if (joint === null) return null;
	const [first, ...others] = dies.map(({ die, pulls }) => ({ kin: kinOf(job, die), pulls }));
	const besides = others.length === 0 ? {} : { besides: others };
	return { kin: first!.kin, at, session: id, ...told, ...joint, ...besides };
}

const floatsOf = (list: readonly (number | null)[]) => Float64Array.from(list, (number) => number ?? Number.NaN);

export const isNumbers = (value: unknown): value is (number | null)[] =>
	Array.isArray(value) && value.every((each) => each === null || typeof each === 'number');

function isDies(value: unknown, job: Job): value is { die: string; pulls: number }[] {
	if (!Array.isArray(value) || value.length === 0) return false;
	const names: unknown[] = value.map((each) => each?.die);
	const known: readonly unknown[] = diesOf(job);
	const isEachOnce = new Set(names).size === names.length;
	return isEachOnce && names.every((die) => known.includes(die)) && value.every(({ pulls }) => isCount(pulls));
}

/** What several dies told together, of so many unknowns. */
function jointOf(vector: unknown, information: unknown, size: number): Pick<Lesson, 'vector' | 'information'> | null {
	const isRow = (row: unknown): row is number[] => isNumbers(row) && row.length === size && row.every(Number.isFinite);
	if (!isRow(vector) || !Array.isArray(information) || information.length !== size) return null;
	return information.every(isRow) && isInformation(information) ? { vector, information } : null;
}
