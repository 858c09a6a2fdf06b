import { ROUNDING } from '../maths/scalar.ts';
import { bentAsOf } from './bent-as.ts';
import { hasCrown } from './checks.ts';
import { diesAtWork, filePlaceOf, growthAt, hasSeveralDies, toolingOf, toolingOfDie } from './dies.ts';
import { frames } from './frames.ts';
import { fromOtherEnd } from './from-far.ts';
import { type PlannedGrowth, refusedGrowth, withoutRoom } from './growth.ts';
import type { Job } from './job.ts';
import { cutLength, marks } from './marks.ts';
import { selfContact, type TubePart } from './self-contact.ts';
import type { Shape } from './shape.ts';
import { swing } from './swing.ts';

/**
 * Something that stands in the way of bending the job as drawn, or makes it doubtful. `at`: the place in the job file, counted from 0 as a
 * fault's is. Lengths in the job's unit, angles in degrees.
 */
export type Warning = { at: string } & (
	| { code: 'stock-short'; stock: number; cut: number; trim: number }
	/** The bends at both ends of a straight that the expected growth leaves nothing of; one of them at the tube's ends. */
	| { code: 'no-room'; bends: readonly number[]; growth: number }
	/** `die`: which one, where bends name several. */
	| { code: 'tight-radius'; clr: number; least: number; diameters: number; die?: string }
	/** `bend` 1 counts from the raw start end. */
	| { code: 'short-clamp'; bend: number; needs: number; is: number }
	| { code: 'dial-limit'; bend: number; angle: number; stop: number; maxAngle: number }
	| { code: 'short-follow'; bend: number; needs: number; is: number }
	| { code: 'self-contact'; parts: [TubePart, TubePart]; distance: number; od: number }
	/** `die`: on which side of the tube the die lies where the part comes down to the floor; null: on either. */
	| { code: 'floor-contact'; bend: number; depth: number; floor: number; die: 'left' | 'right' | null }
	| { code: 'no-crown'; name: string; from: number; bend: number }
);

/** Those that may be gone when the tube is begun at its other end. */
export type Hindrance = Extract<Warning, { code: 'short-clamp' | 'short-follow' | 'floor-contact' }>;

/** Differences under this part of a length are rounding, not a want of tube. */
const isUnder = (length: number, least: number): boolean => length < least - ROUNDING * Math.abs(least);

/** Least center-line radius in outside diameters: the common rule for bent tubes in safety structures. */
const LEAST_RADIUS = 3;

/** Where the job file says how long straight k is: with points, the corner at its far end. A job begun at the far end counts otherwise than its file. */
const straightField = (job: Job, k: number, bends: number): string => {
	const filed = bentAsOf(job).from === 'far' ? fromOtherEnd(k, bends + 1) : k;
	if (job.shape.kind === 'points') return `shape.points[${filed}]`;
	return filed > bends ? 'shape.last' : `shape.bends[${filed - 1}].straight`;
};
const anglePlace = (job: Job, bend: number, bends: number): string => {
	const filed = bentAsOf(job).from === 'far' ? fromOtherEnd(bend, bends) : bend;
	return job.shape.kind === 'points' ? `shape.points[${filed}]` : `shape.bends[${filed - 1}].angle`;
};

function stockShort(job: Job, shape: Shape): Warning[] {
	const { stock } = job.tube;
	const cut = cutLength(job, shape);
	if (stock === null || !isUnder(stock, cut)) return [];
	return [{ at: 'tube.stock', code: 'stock-short', stock, cut, trim: job.trim.start + job.trim.end }];
}

/** Places in the file go by the drawing's own count. */
function noRooms(job: Job, growth: PlannedGrowth, bends: number): Warning[] {
	const tooMuch = refusedGrowth(growth);
	if (tooMuch === null) return [];
	return withoutRoom(job, tooMuch).map((k) => {
		const both = [k - 1, k].filter((bend) => bend >= 1 && bend <= bends);
		return {
			at: straightField(job, k, bends),
			code: 'no-room',
			bends: both,
			growth: Math.max(...both.map((bend) => growthAt(job, tooMuch, bend))),
		};
	});
}

function tightRadius(job: Job): Warning[] {
	const least = LEAST_RADIUS * job.tube.od;
	return diesAtWork(job).flatMap((die) => {
		const { clr } = toolingOfDie(job, die);
		if (!isUnder(clr, least)) return [];
		const which = hasSeveralDies(job) ? { die } : {};
		const at = filePlaceOf(job, die, 'clr');
		return [{ at, code: 'tight-radius', clr, least, diameters: LEAST_RADIUS, ...which }];
	});
}

function shortClamps(job: Job, shape: Shape): Hindrance[] {
	return marks(job, shape, cutLength(job, shape)).flatMap(({ fromStart, fromLastBend }, i) => {
		const { clamp } = toolingOf(job, i + 1);
		const is = fromLastBend ?? fromStart;
		if (!isUnder(is, clamp)) return [];
		const at = straightField(job, i + 1, shape.bends.length);
		return [{ at, code: 'short-clamp', bend: i + 1, needs: clamp, is }];
	});
}

function dialLimits(job: Job, shape: Shape, loadedStop: LoadedStop): Warning[] {
	return shape.bends.flatMap(({ angle }, i) => {
		const { maxAngle } = toolingOf(job, i + 1);
		const stop = loadedStop(angle, i + 1);
		if (stop <= maxAngle) return [];
		const at = anglePlace(job, i + 1, shape.bends.length);
		return [{ at, code: 'dial-limit', bend: i + 1, angle, stop, maxAngle }];
	});
}

/** The dial angle under load that is expected to leave a bend (from 1) of so many degrees. */
export type LoadedStop = (angle: number, bend: number) => number;

/** Tube after an earlier bend is still straight while that bend is made, so only the last bend can want for it. */
function shortFollow(job: Job, shape: Shape): Hindrance[] {
	const bend = shape.bends.length;
	const { follow } = toolingOf(job, bend);
	const is = shape.straights[bend]! + job.trim.end;
	if (!isUnder(is, follow)) return [];
	return [{ at: straightField(job, bend + 1, bend), code: 'short-follow', bend, needs: follow, is }];
}

function contact(job: Job, shape: Shape): Warning[] {
	const { od } = job.tube;
	const found = selfContact(shape, od);
	if (!found) return [];
	const { first, second, distance } = found;
	return [{ at: 'shape', code: 'self-contact', parts: [first, second], distance, od }];
}

/** Which way is down depends on the side on which the die lies, which no job says: either may be the one. */
function floorContacts(job: Job, shape: Shape): Hindrance[] {
	const laid = frames(shape);
	return shape.bends.flatMap((_, i) => {
		const { floor, die: bentOn } = toolingOf(job, i + 1);
		if (floor === null) return [];
		const { above, below } = swing(shape, i + 1, { od: job.tube.od, trim: job.trim.start }, laid);
		const depth = Math.max(above, below);
		if (!isUnder(floor, depth)) return [];
		const die = isUnder(floor, Math.min(above, below)) ? null : below > above ? 'left' : 'right';
		return [{ at: filePlaceOf(job, bentOn, 'floor'), code: 'floor-contact', bend: i + 1, depth, floor, die }];
	});
}

function noCrowns(job: Job, shape: Shape): Warning[] {
	return job.checks.flatMap((check, i) => {
		if (check.kind !== 'drop' || !('bend' in check.to) || hasCrown(check, shape)) return [];
		const { name, from, to } = check;
		return [{ at: `checks[${i}]`, code: 'no-crown', name, from, bend: to.bend }];
	});
}

/** What makes the end of the drawing that this shape begins at the wrong one: it may be right from the other. */
export function hindrances(job: Job, shape: Shape): Hindrance[] {
	return [...shortClamps(job, shape), ...shortFollow(job, shape), ...floorContacts(job, shape)];
}

/**
 * Everything that is known beforehand to stand in the way of bending this shape, planned with this growth; the job file is sound all the same.
 */
export function warnings(job: Job, shape: Shape, growth: PlannedGrowth, loadedStop: LoadedStop): Warning[] {
	return [
		...noRooms(job, growth, shape.bends.length),
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
