import { degrees } from '../tube/angles.ts';
import type { Frames } from '../tube/frames.ts';
import type { Check, Point } from '../tube/job.ts';
import { across, dot, norm, scale, step, subtract } from '../tube/vector.ts';
import { before, directionGrip, type Grip, placeGrip, straightGrip } from './grip.ts';

/** What a check reads the length of, on one tube, in the check's unit. */
interface Apart {
	vector: Point;
	/** What follows its part along `pull`. */
	follows(pull: Point): Grip[];
}

/** A check that reads the same on either side, near there on the drawing: `aim` is what it reads the length of as drawn. */
export interface DrawnSide {
	aim: Point;
	on(tube: Frames): Apart;
}

/** A drawing as near as this to where a check turns back, in the check's tolerances, is passed by bends that are off by a degree or two. */
const NEAR = 10;

/**
 * What keeps a correction on the drawing's side: by its length alone a check near 0 is met on the other side as well, and a tenth of a degree more
 * led from one to the other. Absent where the check tells the side, or the drawing lies far from it. What the faces add to a drop hardly changes there.
 */
export function drawnSideOf(check: Check, drawn: Frames): DrawnSide | undefined {
	const on = apartOf(check, drawn);
	if (on === null) return undefined;
	const aim = on(drawn).vector;
	return norm(aim) < NEAR * check.tolerance ? { aim, on } : undefined;
}

function apartOf(check: Check, drawn: Frames): DrawnSide['on'] | null {
	if (check.kind === 'angle') return directionsApart(check.between, drawn);
	if ((check.kind !== 'drop' && check.kind !== 'width') || 'bend' in check.to) return null;
	const { from, to } = check;
	return (tube) => {
		const { start, direction } = tube.straights[from - 1]!;
		const place = (pull: Point) => straightGrip(to, tube.straights, pull);
		const v = subtract(place([0, 0, 0]).at, start);
		const by = before(from - 1);
		return {
			vector: across(v, direction),
			follows: (pull) => {
				const level = across(pull, direction);
				const tilt = step(scale(v, -dot(direction, pull)), -dot(v, direction), pull);
				return [place(level), placeGrip(start, scale(level, -1), by), directionGrip(direction, tilt, by)];
			},
		};
	};
}

/** By how much two legs' directions differ, one turned about where they run against each other: as good as the angle near 0. */
function directionsApart([j, k]: readonly [number, number], drawn: Frames): DrawnSide['on'] {
	const both = ({ straights }: Frames) => [straights[j - 1]!.direction, straights[k - 1]!.direction] as const;
	const same = Math.sign(dot(...both(drawn)));
	const unit = degrees(1);
	return (tube) => {
		const [a, b] = both(tube);
		return {
			vector: scale(step(b, -same, a), unit),
			follows: (pull) => [
				directionGrip(b, scale(pull, unit), before(k - 1)),
				directionGrip(a, scale(pull, -same * unit), before(j - 1)),
			],
		};
	};
}
