import type { FitMeasure } from '../../fit/correct.ts';
import { drawnSideOf } from '../../fit/drawn-side.ts';
import { gripsOf } from '../../fit/grips.ts';
import type { Limits } from '../../fit/judged.ts';
import type { FarEnd } from '../../fit/kinematics.ts';
import { halved } from '../../maths/halving.ts';
import { atDie } from '../../springback/several-dies.ts';
import { predictStop } from '../../springback/stop.ts';
import { checkAfter, checkIn, checkValue } from '../../tube/checks.ts';
import { dieOf, diesAtWork, radiusAt, toolingOfDie } from '../../tube/dies.ts';
import { corners, type Frames, frames, shapeEnd } from '../../tube/frames.ts';
import type { Check, Job } from '../../tube/job.ts';
import { cutLength, marks } from '../../tube/marks.ts';
import { finishedShape, keepCorners, straightsKept } from '../../tube/resolve.ts';
import type { Shape } from '../../tube/shape.ts';
import { growthOf, type Start } from '../log/start.ts';
import { expectOvality } from '../reading/ovality.ts';

/** A check with its design value; `after` is the last bend (counted from 1) that it needs. */
export interface DueCheck {
	check: Check;
	design: number;
	after: number;
}

/**
 * What the session aims at, derived once from its start: the layout's own shape. `nominal` is the same tube as it is planned to be made; only
 * where a session was begun before corners held does it differ, by the radius expected then.
 */
export interface Design {
	shape: Shape;
	/** Distances from the start end as the layout prints them. */
	marks: readonly number[];
	/** The layout's cut length. */
	cut: number;
	goal: FarEnd;
	nominal: Shape;
	/** Expected finished radius of each bend, made now. */
	radii: readonly number[];
	/** Largest angle that the machine is expected to reach, of each bend. */
	reach: readonly number[];
	checks: readonly DueCheck[];
}

export function designOf(start: Start): Design {
	const { job } = start;
	const growth = growthOf(start);
	const shape = start.corners === undefined ? straightsKept(job) : finishedShape(job, growth);
	const cut = cutLength(job, shape);
	const radii = shape.bends.map((_, i) => radiusAt(job, growth, i + 1));
	return {
		shape,
		cut,
		radii,
		marks: marks(job, shape, cut).map((mark) => mark.fromStart),
		goal: shapeEnd(shape),
		nominal: keepCorners(shape, radii),
		reach: reaches(start, shape.bends.length),
		checks: job.checks.map((check) => ({
			check,
			design: checkValue(check, shape, job.tube),
			after: checkAfter(check, shape.bends.length),
		})),
	};
}

/** Measures for the correction: the checks that the bends from `made` (how many are made) on can still change. */
export function measuresAfter(design: Design, job: Job, made: number): FitMeasure[] {
	const drawn = frames(design.shape);
	return design.checks
		.filter(({ check, after }) => after > made && check.kind !== 'ovality')
		.map((due) => measure(due, drawn, job));
}

function measure({ check, design }: DueCheck, drawn: Frames, job: Job): FitMeasure {
	const side = drawnSideOf(check, drawn);
	return {
		name: check.name,
		design,
		tolerance: check.tolerance,
		value: (shape, laid = frames(shape)) => checkIn(check, laid, job.tube),
		grips: (laid) => gripsOf(check, laid, job.tube),
		...(side && { side }),
	};
}

/** What the finished tube is held against: the drawing, and what it may be off by. */
export function limitsOf({ design, start }: { design: Design; start: Start }): Limits {
	const { shape, direction } = start.job.tolerance;
	return {
		corners: corners(design.shape),
		direction: design.goal.direction,
		shape,
		turn: direction,
		measures: design.checks.map(({ check, design: aim }) => ({
			design: aim,
			tolerance: check.tolerance,
			value: (tube) => (check.kind === 'ovality' ? expectOvality().value : checkIn(check, tube, start.job.tube)),
		})),
	};
}

/** Bends on one die reach as far as each other. */
function reaches({ prior, job }: Start, bends: number): number[] {
	const reach = (die: string): number => {
		const [on, { maxAngle }] = [atDie(prior, die), toolingOfDie(job, die)];
		return halved((angle) => predictStop(on, angle) <= maxAngle, 0, 180, 40)[0];
	};
	const known = new Map(diesAtWork(job).map((die) => [die, reach(die)]));
	return Array.from({ length: bends }, (_, i) => known.get(dieOf(job, i + 1))!);
}
