import { ROUNDING } from '../maths/scalar.ts';
import { radians } from './angles.ts';
import { pointAt } from './drop.ts';
import { type ArcFrame, type Frames, frames } from './frames.ts';
import { leastOver, pointToArc, pointToSegment, type Segment, segmentToSegment } from './nearest.ts';
import type { Shape } from './shape.ts';

/** A straight or a bend, numbered from 1 at the start end. */
export type TubePart = { straight: number } | { bend: number };

export interface Contact {
	/** Nearer to the start end. */
	first: TubePart;
	second: TubePart;
	/** Between the center lines. */
	distance: number;
}

/** What a distance to an arc may be missed by, as a part of the diameter: under two thousandths of an inch on common tube. */
const PRECISION = 1e-3;

interface ContactSearch {
	at: Frames;
	/** Turn between the end of straight j and the start of straight k, radians. */
	turnBetween(j: number, k: number): number;
	/** The least distance so far; only what is nearer is looked for. */
	limit: number;
	precision: number;
}

/** Least distance of the part of an arc within `range` (radians into it) from a segment. */
function arcToSegment(
	arc: ArcFrame,
	range: readonly [number, number],
	segment: Segment,
	search: ContactSearch,
): number {
	return leastOver(range, (turn) => pointToSegment(pointAt(arc, turn), segment), arc.radius, search);
}

/** Least distance of straights j and k. */
function straightToStraight(j: number, k: number, { at, turnBetween }: ContactSearch): number {
	if (turnBetween(j, k) < Math.PI - ROUNDING) return Number.POSITIVE_INFINITY;
	return segmentToSegment(at.straights[j - 1]!, at.straights[k - 1]!);
}

/** Least distance of straight j from bend k, k >= j. */
function straightToBend(j: number, k: number, search: ContactSearch): number {
	const arc = search.at.arcs[k - 1]!;
	const from = Math.max(0, Math.PI - search.turnBetween(j, k));
	const to = radians(arc.angle);
	return from > to ? Number.POSITIVE_INFINITY : arcToSegment(arc, [from, to], search.at.straights[j - 1]!, search);
}

/** Least distance of bend j from straight k, k > j. */
function bendToStraight(j: number, k: number, search: ContactSearch): number {
	const arc = search.at.arcs[j - 1]!;
	const to = Math.min(radians(arc.angle), radians(arc.angle) + search.turnBetween(j + 1, k) - Math.PI);
	return to < 0 ? Number.POSITIVE_INFINITY : arcToSegment(arc, [0, to], search.at.straights[k - 1]!, search);
}

/** Least distance of bend j from bend k, k > j. */
function bendToBend(j: number, k: number, search: ContactSearch): number {
	const [a, b] = [search.at.arcs[j - 1]!, search.at.arcs[k - 1]!];
	const between = radians(a.angle) + search.turnBetween(j + 1, k);
	// The nearer to its own end the point on a lies, the further into b its partner must.
	const from = (turn: number) => Math.max(0, Math.PI - between + turn);
	const to = Math.min(radians(a.angle), radians(b.angle) + between - Math.PI);
	if (to < 0) return Number.POSITIVE_INFINITY;
	return leastOver([0, to], (turn) => pointToArc(pointAt(a, turn), b, from(turn)), a.radius + b.radius, search);
}

/**
 * Where the center line of a tube comes nearer to itself than `od`, at its nearest; null where it does not. Distances to an arc are
 * found to 1e-3 of `od` or better.
 *
 * Only places with half a turn or more between them are compared. Closed by the chord across its nearest places, a stretch of
 * center line turns at least a full turn (Fenchel's theorem), at most half of it at the chord's two corners: so less than half a
 * turn of bending cannot come back to itself, however short its straights, and neighbors need no exception.
 */
export function selfContact(shape: Shape, od: number): Contact | null {
	const turned = [0];
	for (const bend of shape.bends) turned.push(turned.at(-1)! + radians(bend.angle));
	const search: ContactSearch = {
		at: frames(shape),
		turnBetween: (j, k) => turned[k - 1]! - turned[j - 1]!,
		limit: od,
		precision: PRECISION * od,
	};
	let nearest: Contact | null = null;
	const offer = (first: TubePart, second: TubePart, distance: number) => {
		if (distance >= search.limit) return;
		nearest = { first, second, distance };
		search.limit = distance;
	};
	const bends = shape.bends.length;
	for (let j = 1; j <= bends + 1; j++) {
		for (let k = j; k <= bends + 1; k++) {
			if (k > j) {
				offer({ straight: j }, { straight: k }, straightToStraight(j, k, search));
				if (j <= bends) offer({ bend: j }, { straight: k }, bendToStraight(j, k, search));
			}
			if (k <= bends) {
				offer({ straight: j }, { bend: k }, straightToBend(j, k, search));
				if (k > j) offer({ bend: j }, { bend: k }, bendToBend(j, k, search));
			}
		}
	}
	return nearest;
}
