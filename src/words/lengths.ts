import type { Job } from '../tube/job.ts';
import { formatTape } from '../units/tape.ts';
import { convertLength, type Units } from '../units/units.ts';

/** How lengths are shown and taken: in the job's own unit by its tape, or as one chooses. */
export type Lengths = 'fraction' | 'decimal' | 'mm';

/** What of a job lengths are shown by. */
export type Ruled = Pick<Job, 'units'> & { tooling: Pick<Job['tooling'], 'tape'>; lengths?: Lengths | null };

/** What sentences about a job are worded by: its unit and tape, its checks, and how lengths are wanted. */
export type Wording = Ruled & Pick<Job, 'checks'>;

/** A job, and how its lengths are shown; null: in its own unit by its own tape. */
export interface ShownJob extends Job {
	lengths: Lengths | null;
}

/** The divisions of the tape that is thought of where it is not the job's own. */
const OTHER_TAPE: Record<Lengths, number> = { fraction: 1 / 16, decimal: 0.001, mm: 1 };
const UNIT: Record<Lengths, Units> = { fraction: 'in', decimal: 'in', mm: 'mm' };

/** The next way of showing lengths, from the one in force. */
export function nextLengths(job: Ruled): Lengths {
	const order: readonly Lengths[] = ['fraction', 'decimal', 'mm'];
	return order[(order.indexOf(lengthsOf(job)) + 1) % order.length]!;
}

/** The way in force. */
export function lengthsOf({ lengths, units }: Ruled): Lengths {
	return lengths ?? (units === 'in' ? 'fraction' : 'mm');
}

export const LENGTH_NAMES: Record<Lengths, string> = {
	fraction: 'inch fractions',
	decimal: 'decimal inches',
	mm: 'millimeters',
};

/** The same as short as a key line wants it. */
export const LENGTH_KEYS: Record<Lengths, string> = { fraction: 'fractions', decimal: 'decimals', mm: 'mm' };

/** The unit in which lengths are shown and taken. */
export function shownUnits(job: Ruled): Units {
	return UNIT[lengthsOf(job)];
}

/** A length of the job, in the unit in which it is shown. */
export function inShown(length: number, job: Ruled): number {
	return convertLength(length, job.units, shownUnits(job));
}

/** A length given in the unit that is shown, in the job's. */
export function fromShown(length: number, job: Ruled): number {
	return convertLength(length, shownUnits(job), job.units);
}

/** The division to which a mark is shown, in the unit in which it is shown. */
export function division(job: Ruled): number {
	const lengths = lengthsOf(job);
	return lengths !== 'decimal' && UNIT[lengths] === job.units ? job.tooling.tape : OTHER_TAPE[lengths];
}

/** A length as the tape reads it, without unit. */
export function tapeValue(length: number, job: Ruled): string {
	return formatTape(inShown(length, job), division(job), shownUnits(job));
}

/** A unit in a heading. */
export const unitName = (units: Units): string => (units === 'in' ? 'inches' : 'millimeters');
