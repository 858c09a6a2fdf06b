import type { MeasuredIn } from '../../session/protocol/measured-in.ts';
import { trimmed } from '../../units/format.ts';
import { inShown, type Ruled, shownUnits } from '../lengths.ts';
import { dial } from '../numbers.ts';

/** Numbers as they are typed into a field: what to write, and how one was understood. */

/** What to write instead of what cannot be read. */
export function numberRight(measure: MeasuredIn, job: Ruled): string {
	if (measure === 'angle') return 'write an angle, for example 16.5';
	if (measure === 'ratio') return 'write a ratio, for example 0.96';
	return `write a length, for example ${shownUnits(job) === 'in' ? '9 3/8' : '238'}`;
}

export const bendRight = (last: number): string => `write a bend's number, from 1 to ${last}`;

/** A number as it was understood. */
export function written(value: number, measure: MeasuredIn, job: Ruled): string {
	if (measure === 'angle') return dial(value);
	if (measure === 'ratio') return trimmed(value, 4);
	const own = `${trimmed(value, 4)} ${job.units}`;
	return shownUnits(job) === job.units ? own : `${trimmed(inShown(value, job), 4)} ${shownUnits(job)} (${own})`;
}
