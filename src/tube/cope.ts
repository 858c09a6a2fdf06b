import { placeOfLeast, sharpened } from '../maths/golden-section.ts';
import { clamp } from '../maths/scalar.ts';
import { cosine, degrees, normalizeRotation, sine } from './angles.ts';
import type { Cope, EndName, Job } from './job.ts';

/** A place of the cut: where round the tube, and how far back from the drawing's end. */
export interface CutPlace {
	/** From the joint line, right-hand rule about the direction of travel, in (-180, 180]. */
	degrees: number;
	/** Into the tube is positive. */
	back: number;
}

/** What makes a joint doubtful. */
export type CopeDoubt =
	/** The center lines run too nearly along each other. */
	| { code: 'shallow'; angle: number; least: number }
	/** So little of the two tubes is behind each other, square to both. */
	| { code: 'thin-overlap'; overlap: number; least: number }
	/** So many degrees of this tube pass by the other without touching it. */
	| { code: 'passes-by'; degrees: number };

/** How an end is cut so that it fits another tube. Lengths in the job's unit. */
export interface CopeCut {
	/** How far back from the drawing's end to cut, so many degrees from the joint line: at the tube's outside and at its inside. */
	back(degrees: number): { outer: number; inner: number };
	/** Where the tube must be longest, and where it is cut back most. */
	shallowest: CutPlace;
	deepest: CutPlace;
	/** How far the longest point reaches past the drawing's end; below 0: it ends before that. */
	longer: number;
	doubts: CopeDoubt[];
}

/** Degrees between the center lines below which a joint is told as shallow, and the part of the smaller tube that should overlap (our own). */
const SHALLOW = 25;
const LEAST_OVERLAP = 0.5;

/** What reading and converting lengths may leave of nothing, as a part of the lengths. */
const LENGTH_ROUNDING = 1e-14;

/** Places round the tube that are tried for the extremes. */
const TRIED_PLACES = 360;

/**
 * The cut of one end. Along the line of the tube's surface that lies `degrees` from the joint line it is where that line meets the other
 * tube's outside (intersection of two cylinders, in the plane of the two center lines); a line that passes by is cut where it is nearest.
 */
export function copeCut({ od, wall }: Job['tube'], cope: Cope, end: EndName): CopeCut {
	const at = (radius: number) => (degrees: number) => cutBackAt(degrees, radius, cope, end);
	const [outer, inner] = [at(od / 2), at(od / 2 - wall)];
	const shallowest = leastCut((degrees) => Math.min(outer(degrees), inner(degrees)), od);
	const deepest = leastCut((degrees) => -Math.max(outer(degrees), inner(degrees)), od);
	return {
		back: (degrees) => ({ outer: outer(degrees), inner: inner(degrees) }),
		shallowest,
		deepest: { ...deepest, back: -deepest.back },
		longer: 0 - shallowest.back,
		doubts: cutDoubts(od, cope),
	};
}

function cutBackAt(degrees: number, radius: number, { od, angle, offset }: Cope, end: EndName): number {
	// To the right of the joint line, looking out of the end: at the start end one looks against the travel.
	const right = end === 'far' ? degrees : -degrees;
	const reach = Math.sqrt(Math.max(0, besideSquared(right, radius, od / 2, offset)));
	return (reach + radius * cosine(degrees) * cosine(angle)) / sine(angle);
}

/**
 * The square of how far the other tube's outside reaches toward this one, beside its center line: other^2 - (radius sin - offset)^2, in two factors
 * with half angles. Taken as it stands the difference is lost where both are alike, and its root is off by 1e-8.
 */
function besideSquared(right: number, radius: number, other: number, offset: number): number {
	const half = (degrees: number) => 2 * radius * sine(degrees / 2) ** 2;
	// Tubes that touch from within by the drawing do so however their sizes were rounded.
	const room = (length: number) => (Math.abs(length) < LENGTH_ROUNDING * (radius + other) ? 0 : length);
	return (room(other - radius + offset) + half(90 - right)) * (room(other - radius - offset) + half(90 + right));
}

/** In degrees: between the places by which an extreme is told sharply, and what it is off by where it was told by its values. */
const APART = 0.01;
const UNSHARP = 1e-5;

function leastCut(f: (degrees: number) => number, od: number): CutPlace {
	const step = 360 / TRIED_PLACES;
	const alike = 1e-12 * od;
	// Of places that are alike the one nearest to the joint line.
	const places = Array.from({ length: TRIED_PLACES }, (_, i) => normalizeRotation(i * step));
	const nearest = places.reduce((best, place) => (f(place) < f(best) - alike ? place : best));
	const found = sharpened(placeOfLeast(nearest - step, nearest + step, f), APART, UNSHARP, f);
	// An extreme on a place that was tried is given as it is.
	const degrees = f(found) < f(nearest) - alike ? found : nearest;
	return { degrees: normalizeRotation(degrees), back: f(degrees) };
}

function cutDoubts(od: number, cope: Cope): CopeDoubt[] {
	const { od: other, angle, offset } = cope;
	const found: CopeDoubt[] = [];
	if (Math.min(angle, 180 - angle) < SHALLOW) found.push({ code: 'shallow', angle, least: SHALLOW });
	const overlap = Math.min(od / 2, Math.abs(offset) + other / 2) - Math.max(-od / 2, Math.abs(offset) - other / 2);
	const wanted = LEAST_OVERLAP * Math.min(od, other);
	if (overlap < wanted) found.push({ code: 'thin-overlap', overlap, least: wanted });
	const passing = passingBy(od / 2, other / 2, offset);
	if (passing > 0) found.push({ code: 'passes-by', degrees: passing });
	return found;
}

/** Degrees of the tube's round that lie further than the other's radius to either side of its center line. */
function passingBy(radius: number, other: number, offset: number): number {
	// The part of the round beyond a distance to one side.
	const beyond = (distance: number) => 2 * Math.acos(clamp(distance / radius, -1, 1));
	return degrees(beyond(other + offset) + beyond(other - offset));
}

/** An end that is cut to fit another tube, in numbers. Lengths in the job's unit. */
export interface CopedEnd {
	end: EndName;
	/** The other tube's, and the angle between the center lines. */
	od: number;
	angle: number;
	/** From the longest point to the one that is cut back most. */
	depth: number;
	/** Where that is round the tube, from bend 1's inside as the joint's `turn`, in (-180, 180]. */
	deepestAt: number;
	/** How far the longest point lies past the drawing's end; below 0: before it. */
	past: number;
	doubts: CopeDoubt[];
}

/** The ends of the job that are coped, start end first. */
export function copedEnds({ tube, ends }: Pick<Job, 'tube' | 'ends'>): CopedEnd[] {
	return (['start', 'far'] as const).flatMap((end) => {
		const cope = ends?.[end]?.cope;
		if (cope === undefined) return [];
		const { deepest, longer: past, doubts } = copeCut(tube, cope, end);
		const deepestAt = normalizeRotation(cope.turn + deepest.degrees);
		return [{ end, od: cope.od, angle: cope.angle, depth: deepest.back + past, deepestAt, past, doubts }];
	});
}

/** How far an end's longest point lies past the drawing's end; 0 for one that is cut square. */
export function pastEnd(job: Pick<Job, 'tube' | 'ends'>, end: EndName): number {
	return copedEnds(job).find((coped) => coped.end === end)?.past ?? 0;
}

/** The trims with what an end needs more where its cope reaches past the drawing's end. One that ends before it is left that long. */
export function trimWithCopes(trim: Job['trim'], job: Pick<Job, 'tube' | 'ends'>): Job['trim'] {
	const room = (end: EndName) => Math.max(0, pastEnd(job, end));
	return { start: trim.start + room('start'), end: trim.end + room('far') };
}
