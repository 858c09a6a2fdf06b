import type { FitMeasure } from '../../fit/correct.ts';
import { gripsOf } from '../../fit/grips.ts';
import type { FarEnd } from '../../fit/kinematics.ts';
import type { Limits } from '../../fit/verdict.ts';
import { halved } from '../../maths/halving.ts';
import { predictStop } from '../../springback/stop.ts';
import { checkAfter, checkIn, checkValue } from '../../tube/checks.ts';
import { corners, frames, shapeEnd } from '../../tube/frames.ts';
import type { Check, Job } from '../../tube/job.ts';
import { cutLength, marks } from '../../tube/marks.ts';
import { finishedShape, keepCorners, straightsKept } from '../../tube/resolve.ts';
import type { Shape } from '../../tube/shape.ts';
import type { Start } from '../log/start.ts';
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
	/** Expected finished radius of a bend made now. */
	radius: number;
	/** Largest bend angle that the machine is expected to reach. */
	reach: number;
	checks: readonly DueCheck[];
}

export function designOf(start: Start): Design {
	const { job } = start;
	const shape = start.corners === undefined ? straightsKept(job) : finishedShape(job, start.growth);
	const cut = cutLength(job, shape);
	const radius = job.tooling.clr * start.growth;
	return {
		shape,
		cut,
		radius,
		marks: marks(job, shape, cut).map((mark) => mark.fromStart),
		goal: shapeEnd(shape),
		nominal: keepCorners(
			shape,
			shape.bends.map(() => radius),
		),
		reach: reach(start),
		checks: job.checks.map((check) => ({
			check,
			design: checkValue(check, shape, job.tube),
			after: checkAfter(check, shape.bends.length),
		})),
	};
}

/** Measures for the correction: the checks that the bends from `made` (how many are made) on can still change. */
export function measuresAfter(design: Design, job: Job, made: number): FitMeasure[] {
	return design.checks
		.filter(({ check, after }) => after > made && check.kind !== 'ovality')
		.map((due) => measure(due, job));
}

function measure({ check, design }: DueCheck, job: Job): FitMeasure {
	return {
		name: check.name,
		design,
		tolerance: check.tolerance,
		value: (shape, laid = frames(shape)) => checkIn(check, laid, job.tube),
		grips: (laid) => gripsOf(check, laid, job.tube),
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

function reach({ prior, job }: Start): number {
	const [reached] = halved((angle) => predictStop(prior, angle) <= job.tooling.maxAngle, 0, 180, 40);
	return reached;
}
