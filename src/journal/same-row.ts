import type { KeptRow } from './kept-row.ts';

/** Beyond this part of a number it is another one; below it only another processor has rounded. */
const ALIKE = 1e-6;

/** Whether two rows of one session tell the same; where its log lies is its own affair. */
export function tellsTheSame(a: KeptRow, b: KeptRow): boolean {
	return isAlike(comparable(a), comparable(b));
}

/** As JSON has it: a field that is absent is none. */
function comparable({ id, job, at, startId, touched, status, listed, kin, pulls, lesson, figures }: KeptRow): unknown {
	return JSON.parse(JSON.stringify({ id, job, at, startId, touched, status, listed, kin, pulls, lesson, figures }));
}

function isAlike(a: unknown, b: unknown): boolean {
	if (typeof a === 'number' && typeof b === 'number')
		return Math.abs(a - b) <= ALIKE * Math.max(1, Math.abs(a), Math.abs(b));
	if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
	const [inA, inB] = [Object.entries(a), Object.keys(b)];
	return (
		Array.isArray(a) === Array.isArray(b) &&
		inA.length === inB.length &&
		inA.every(([name, value]) => isAlike(value, (b as Record<string, unknown>)[name]))
	);
}
