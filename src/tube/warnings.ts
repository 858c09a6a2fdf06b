import { formatAngle, formatLength } from '../units/format.ts';
import { bentAsOf } from './bent-as.ts';
import { hasCrown } from './checks.ts';
import type { Job } from './job.ts';
import { cutLength, marks } from './marks.ts';
import { type Part, selfContact } from './self-contact.ts';
import type { Shape } from './shape.ts';
import { swing } from './swing.ts';

/** Something that stands in the way of bending the job as drawn, or makes it doubtful. */
export interface Warning {
	/** Place in the job file, counted from 0 as a fault's is. */
	at: string;
	code: string;
	text: string;
}

/** Differences under this part of a length are rounding, not a want of tube. */
const ROUNDING = 1e-9;
const isUnder = (length: number, least: number): boolean => length < least - ROUNDING * Math.abs(least);

/** Least centre-line radius in outside diameters: the common rule for bent tubes in safety structures. */
const LEAST_RADIUS = 3;

/** Where the job file says how long straight k is: with points, the corner at its far end. A job begun at the far end counts otherwise than its file. */
const straightPlace = (job: Job, k: number, bends: number): string => {
	const filed = bentAsOf(job).from === 'far' ? bends + 2 - k : k;
	if (job.shape.kind === 'points') return `shape.points[${filed}]`;
	return filed > bends ? 'shape.last' : `shape.bends[${filed - 1}].straight`;
};
const anglePlace = (job: Job, bend: number, bends: number): string => {
	const filed = bentAsOf(job).from === 'far' ? bends + 1 - bend : bend;
	return job.shape.kind === 'points' ? `shape.points[${filed}]` : `shape.bends[${filed - 1}].angle`;
};

const partName = (part: Part): string => ('bend' in part ? `bend ${part.bend}` : `straight ${part.straight}`);

function stockShort(job: Job, shape: Shape): Warning[] {
	const { stock } = job.tube;
	const cut = cutLength(job, shape);
	if (stock === null || !isUnder(stock, cut)) return [];
	const length = (value: number) => formatLength(value, job.units);
	const trim = job.trim.start + job.trim.end;
	const help = trim > 0 ? `a longer piece, or less trim (now ${length(trim)} in all)` : 'a longer piece';
	const text =
		`The piece in hand is ${length(stock)}, but the tube needs ${length(cut)}: ${length(cut - stock)} short. ` +
		`Take ${help}.`;
	return [{ at: 'tube.stock', code: 'stock-short', text }];
}

function tightRadius(job: Job): Warning[] {
	const { clr } = job.tooling;
	const least = LEAST_RADIUS * job.tube.od;
	if (!isUnder(clr, least)) return [];
	const text =
		`The die's centre-line radius ${formatLength(clr, job.units)} is under ${LEAST_RADIUS} outside diameters ` +
		`(${formatLength(least, job.units)}): the tube may flatten or wrinkle, and many rule books refuse it. Use a larger die.`;
	return [{ at: 'tooling.clr', code: 'tight-radius', text }];
}

function shortClamps(job: Job, shape: Shape): Warning[] {
	const { clamp } = job.tooling;
	const length = (value: number) => formatLength(value, job.units);
	return marks(job, shape, cutLength(job, shape)).flatMap(({ fromStart, fromLastBend }, i) => {
		const room = fromLastBend ?? fromStart;
		if (!isUnder(room, clamp)) return [];
		const [from, help] =
			fromLastBend === null
				? ['the raw start end', `more trim at the start end (${length(clamp - room)} more)`]
				: [`bend ${i}`, `${length(clamp - room)} more straight between bends ${i} and ${i + 1}, or a shorter clamp`];
		const text =
			`Bend ${i + 1}: the clamp needs ${length(clamp)} of straight tube before the mark, but from ${from} to the mark ` +
			`there is ${length(room)}. What would help: ${help}.`;
		return [{ at: straightPlace(job, i + 1, shape.bends.length), code: 'short-clamp', text }];
	});
}

function dialLimits(job: Job, shape: Shape, loadedStop: (angle: number) => number): Warning[] {
	const { maxAngle } = job.tooling;
	return shape.bends.flatMap(({ angle }, i) => {
		const stop = loadedStop(angle);
		if (stop <= maxAngle) return [];
		const text =
			`Bend ${i + 1}: for ${formatAngle(angle, 2)} the dial would have to go to about ${formatAngle(stop)} under load, ` +
			`but the machine ends at ${formatAngle(maxAngle)}. Use a machine that reaches further, or split the bend in two.`;
		return [{ at: anglePlace(job, i + 1, shape.bends.length), code: 'dial-limit', text }];
	});
}

/** Tube after an earlier bend is still straight while that bend is made, so only the last bend can want for it. */
function shortFollow(job: Job, shape: Shape): Warning[] {
	const { follow } = job.tooling;
	const bends = shape.bends.length;
	const room = shape.straights[bends]! + job.trim.end;
	if (!isUnder(room, follow)) return [];
	const length = (value: number) => formatLength(value, job.units);
	const text =
		`Bend ${bends}: ${length(follow)} of straight tube must lie behind the bend when it is pulled, but up to the raw far end ` +
		`there is ${length(room)}. What would help: ${length(follow - room)} more trim at the far end.`;
	return [{ at: straightPlace(job, bends + 1, bends), code: 'short-follow', text }];
}

function contact(job: Job, shape: Shape): Warning[] {
	const { od } = job.tube;
	const found = selfContact(shape, od);
	if (!found) return [];
	const text =
		`The finished tube runs into itself: the centre lines of ${partName(found.first)} and ${partName(found.second)} come within ` +
		`${formatLength(found.distance, job.units)}, and the tube is ${formatLength(od, job.units)} thick. Check the rotations ` +
		'between them, or lead one past the other.';
	return [{ at: 'shape', code: 'self-contact', text }];
}

/** Which way is down depends on the side on which the die lies, which no job says: either may be the one. */
function floorContacts(job: Job, shape: Shape): Warning[] {
	const { floor } = job.tooling;
	if (floor === null) return [];
	const length = (value: number) => formatLength(value, job.units);
	return shape.bends.flatMap((_, i) => {
		const { above, below } = swing(shape, i + 1, { od: job.tube.od, trim: job.trim.start });
		const deepest = Math.max(above, below);
		if (!isUnder(floor, deepest)) return [];
		const other = Math.min(above, below);
		const where = isUnder(floor, other) ? '' : `with the die to the ${below > above ? 'left' : 'right'} of the tube, `;
		const text =
			`Bend ${i + 1}: ${where}the made part hangs ${length(deepest)} below the die's plane while it swings, and the floor is ` +
			`${length(floor)} below it (left and right as seen at the clamp, looking towards the far end). Stand the bender higher, or ` +
			'start from the other end if the layout finds that end free.';
		return [{ at: 'tooling.floor', code: 'floor-contact', text }];
	});
}

function noCrowns(job: Job, shape: Shape): Warning[] {
	return job.checks.flatMap((check, i) => {
		if (check.kind !== 'drop' || !('bend' in check.to) || hasCrown(check, shape)) return [];
		const { bend } = check.to;
		const text =
			`Check "${check.name}": the tube nowhere runs parallel to straight ${check.from} in bend ${bend}, so there is no crown to ` +
			`measure to. Use "straight": ${bend + 1}, the end of that bend, or "straight": ${bend}, its beginning, in place of "bend".`;
		return [{ at: `checks[${i}]`, code: 'no-crown', text }];
	});
}

/**
 * Everything that is known beforehand to stand in the way of bending this shape; the job file is sound all the same.
 * `loadedStop` gives the dial angle under load that is expected to leave a bend of so many degrees.
 */
export function warnings(job: Job, shape: Shape, loadedStop: (angle: number) => number): Warning[] {
	return [
		...stockShort(job, shape),
		...tightRadius(job),
		...shortClamps(job, shape),
		...dialLimits(job, shape, loadedStop),
		...shortFollow(job, shape),
		...contact(job, shape),
		...floorContacts(job, shape),
		...noCrowns(job, shape),
	];
}
