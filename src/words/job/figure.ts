import { ceilTo, floorTo } from '../../maths/scalar.ts';
import { trimmed } from '../../units/format.ts';

/** What a person writes in a job file has at most so many characters; the rest comes from a change of unit. */
const WRITTEN = 8;

/** A number that stands in a file, or that was converted from what stands there. */
export function figure(value: number): string {
	const text = String(value);
	if (text.length <= WRITTEN || Number.isInteger(value)) return text;
	return Math.abs(value) < 1 ? String(Number(value.toPrecision(5))) : trimmed(value, 4);
}

/** A limit as it can be written: rounded so that what is told is taken. */
export const leastFigure = (limit: number): string => trimmed(ceilTo(limit, 0.001), 3);
export const mostFigure = (limit: number): string => trimmed(floorTo(limit, 0.001), 3);
