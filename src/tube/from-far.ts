import { toldAs } from './bent-as.ts';
import { turnedEnds } from './end-fits.ts';
import type { Bend, Check, CornerName, Job, ShapeSource, StraightPlace } from './job.ts';

/**
 * The same tube begun at its far end: straights, bends, trims, what the ends meet and all that the checks name counted from there. A rotation between two
 * bends is the same from either end, since both travel and order turn round; the first one, which only sets the first bend's
 * plane, stays the first. Each check keeps its design value. Turned twice it is the job again.
 */
export function fromFar(job: Job): Job {
	const bends = job.shape.kind === 'bends' ? job.shape.bends.length : job.shape.points.length - 2;
	const turned = {
		...job,
		shape: turnedShape(job.shape),
		trim: { start: job.trim.end, end: job.trim.start },
		checks: job.checks.map((check) => turnedCheck(check, bends)),
		...turnedEnds(job.ends, job.shape),
	};
	return toldAs(turned, ({ mirror, from }) => ({ mirror, from: from === 'far' ? 'start' : 'far' }));
}

/** The number that one of so many bends, or straights, has as counted from the other end. */
export const fromOtherEnd = (number: number, count: number): number => count + 1 - number;

function turnedShape(shape: ShapeSource): ShapeSource {
	if (shape.kind === 'points') return { ...shape, points: shape.points.toReversed() };
	const straights = [...shape.bends.map((bend) => bend.straight), shape.last].toReversed();
	const [first, ...rest] = shape.bends.map((bend) => bend.rotation);
	const rotations = [first!, ...rest.toReversed()];
	const bends = shape.bends
		.toReversed()
		.map((bend, i): Bend => ({ ...bend, straight: straights[i]!, rotation: rotations[i]! }));
	return { ...shape, bends, last: straights.at(-1)! };
}

function turnedCheck(check: Check, bends: number): Check {
	const straight = (number: number) => fromOtherEnd(number, bends + 1);
	const bend = (number: number) => fromOtherEnd(number, bends);
	const pair = ([j, k]: readonly [number, number]) => [straight(j), straight(k)] as const;
	const corner = (name: CornerName): CornerName =>
		'bend' in name ? { bend: bend(name.bend) } : { end: name.end === 'start' ? 'far' : 'start' };
	// What was the start of a straight is now its end.
	const place = (to: StraightPlace): StraightPlace =>
		to.at === 'end' ? { straight: straight(to.straight) } : { straight: straight(to.straight), at: 'end' };
	switch (check.kind) {
		case 'drop':
			return {
				...check,
				from: straight(check.from),
				to: 'bend' in check.to ? { bend: bend(check.to.bend) } : place(check.to),
			};
		case 'angle':
			return { ...check, between: pair(check.between) };
		case 'span':
			return { ...check, from: corner(check.from), to: corner(check.to) };
		case 'out':
			return { ...check, plane: pair(check.plane), to: place(check.to) };
		case 'width':
			return { ...check, from: straight(check.from), to: place(check.to) };
		case 'overall': {
			const { at, ...rest } = check;
			return at === 'end' ? rest : { ...rest, at: 'end' };
		}
		case 'ovality':
			return { ...check, bend: bend(check.bend) };
	}
}
