import type { ReadingKind } from '../session/protocol/kinds.ts';
import { type MeasuredIn, measuredIn } from '../session/protocol/measured-in.ts';
import type { Job } from '../tube/job.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import { formatTape } from '../units/tape.ts';
import { inShown, lengthsOf, type Ruled, shownUnits, tapeValue, type Wording } from './lengths.ts';

export function angle(degrees: number): string {
	return formatAngle(degrees, 1);
}

/** A dial figure: dials are divided down to quarters of a degree. */
export function dial(degrees: number): string {
	return formatAngle(degrees, 2);
}

/** An angle without its sign, behind ±. */
export function exactAngle(value: number): string {
	return formatAngle(value, 2);
}

/** A part of a whole: `1.5 %`. */
export const percent = (part: number, places = 1): string => `${trimmed(100 * part, places)} %`;

/** How far off an angle may be: never said to be nothing. */
export function about(sd: number): string {
	return angle(Math.max(sd, 0.1));
}

/** How far from what is wanted: `0.3° short`, `0.4° over`. */
export function shortOrOver(off: number): string {
	return `${angle(Math.abs(off))} ${off < 0 ? 'short' : 'over'}`;
}

/** Within what a bend may end: `±0.5°`, `-0.5° to +1°`. */
export function bandOf({ under, over }: { under: number; over: number }): string {
	return under === over ? `±${exactAngle(under)}` : `-${exactAngle(under)} to +${exactAngle(over)}`;
}

/** What is believed, and how far off it may be: `15.3°, give or take 0.2°`. */
export function giveOrTake(value: string, off: string): string {
	return `${value}, give or take ${off}`;
}

/** An angle so. */
export function angleGiveOrTake({ angle: degrees, sd }: { angle: number; sd: number }): string {
	return giveOrTake(angle(degrees), about(sd));
}

/** A length as the tape reads it, with its unit. */
export function tape(length: number, job: Ruled): string {
	return `${tapeValue(length, job)} ${shownUnits(job)}`;
}

/** A length finer than the tape: what a check compares. */
export function fine(length: number, job: Ruled): string {
	const shown = inShown(length, job);
	if (lengthsOf(job) !== 'fraction') return formatLength(shown, shownUnits(job));
	return `${formatTape(shown, Math.min(job.units === 'in' ? job.tooling.tape : 1 / 64, 1 / 64), 'in')} in`;
}

/** The same of a length that must not be said to be nothing: what is less than any division is given in decimals. */
export function notNothing(length: number, job: Ruled): string {
	const shown = fine(length, job);
	return length !== 0 && /^-?0 /.test(shown) ? formatLength(inShown(length, job), shownUnits(job)) : shown;
}

/** What a reading of that kind is measured in; a check's by the check of that name. */
export function measureOf(of: ReadingKind, job: Pick<Job, 'checks'>, name?: string): MeasuredIn {
	return measuredIn(of, of === 'check' ? job.checks.find((check) => check.name === name)?.kind : undefined);
}

/** A value of that measure, as it is shown beside others of its kind. */
export function shown(value: number, measure: MeasuredIn, job: Ruled): string {
	if (measure === 'angle') return angle(value);
	return measure === 'ratio' ? trimmed(value, 3) : fine(value, job);
}

export function readingSpread(sd: number, measure: MeasuredIn, job: Ruled): string {
	if (measure === 'angle') return angle(Math.max(sd, 0.1));
	if (measure === 'ratio') return trimmed(Math.max(sd, 0.001), 3);
	return notNothing(sd, job);
}

/** What an instrument read, with its unit: a dial in its own divisions, a length as the tape reads it. */
export function readingValue(value: number, of: ReadingKind, name: string | undefined, job: Wording): string {
	const measure = measureOf(of, job, name);
	if (measure === 'angle') return dial(value);
	return measure === 'length' ? notNothing(value, job) : shown(value, measure, job);
}
