/** Reads `ends`: what each finished end meets. */
import { normalizeRotation } from '../tube/angles.ts';
import { BOUNDS } from '../tube/bounds.ts';
import type { Cope, EndFit, EndName, Job, Units } from '../tube/job.ts';
import { inside, type Report, valued } from './fault.ts';
import { anything, length, number, readObject } from './field-readers.ts';

export function readEnds(value: unknown, od: number | undefined, units: Units, report: Report): Job['ends'] {
	if (value === undefined) return undefined;
	const given = readObject(value, 'ends', { start: anything, far: anything }, [], report);
	const read = (name: EndName) =>
		given[name] === undefined ? undefined : readEnd(given[name], inside('ends', name), od, units, report);
	const [start, far] = [read('start'), read('far')];
	return start || far ? { ...(start && { start }), ...(far && { far }) } : undefined;
}

function readEnd(value: unknown, at: string, od: number | undefined, units: Units, report: Report): EndFit | undefined {
	const { cope } = readObject(value, at, { cope: anything }, [], report);
	const read = readCope(cope, inside(at, 'cope'), od, units, report);
	return read && { cope: read };
}

function readCope(value: unknown, at: string, od: number | undefined, units: Units, report: Report): Cope | undefined {
	const readers = {
		od: length(units, BOUNDS.od),
		angle: number('joint-angle', BOUNDS.jointAngle),
		offset: length(units, BOUNDS.jointOffset),
		turn: number('joint-turn'),
	};
	const read = readObject(value, at, readers, ['od', 'angle'], report);
	const { od: other, angle, offset = 0, turn = 0 } = read;
	if (other === undefined || angle === undefined) return undefined;
	const most = od === undefined ? Number.POSITIVE_INFINITY : (od + other) / 2;
	if (Math.abs(offset) < most) return { od: other, angle, offset, turn: normalizeRotation(turn) };
	report({ at: inside(at, 'offset'), found: valued(offset), right: { code: 'less-than-both-halves', most } });
	return undefined;
}
