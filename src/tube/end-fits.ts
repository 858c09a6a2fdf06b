import { normalizeRotation } from './angles.ts';
import type { Cope, EndFit, Job, ShapeSource } from './job.ts';
import { pointsToBends } from './points.ts';
import { rotationsAfterFirst } from './turns.ts';

type JobEnds = Job['ends'];

/** The field of a job that says what its ends meet, where there is anything to say. */
const endsField = (start: EndFit | undefined, far: EndFit | undefined): Pick<Job, 'ends'> =>
	start || far ? { ends: { ...(start && { start }), ...(far && { far }) } } : {};

const fitWithCope = (fit: EndFit | undefined, change: (cope: Cope) => Partial<Cope>): EndFit | undefined =>
	fit && { cope: { ...fit.cope, ...change(fit.cope) } };

/**
 * The ends of the tube begun at its far end. Which way an offset goes is told looking out of the end, and stays; where the joint line lies is
 * told from the first bend's plane along the travel, and both turn round: from the last bend's plane it lies on by the sum of rotations.
 */
export function turnedEnds(ends: JobEnds, shape: ShapeSource): Pick<Job, 'ends'> {
	if (ends === undefined) return {};
	// Rotations do not depend on the radius.
	const { bends } = shape.kind === 'bends' ? shape : pointsToBends(shape.points, 0);
	const sum = rotationsAfterFirst(bends);
	const round = ({ turn }: Cope) => ({ turn: normalizeRotation(sum - turn) });
	return endsField(fitWithCope(ends.far, round), fitWithCope(ends.start, round));
}

/** The ends of the tube for the other hand. */
export function mirroredEnds(ends: JobEnds): Pick<Job, 'ends'> {
	if (ends === undefined) return {};
	const other = ({ turn, offset }: Cope) => ({ turn: normalizeRotation(-turn), offset: 0 - offset });
	return endsField(fitWithCope(ends.start, other), fitWithCope(ends.far, other));
}
