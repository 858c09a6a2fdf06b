import { arcLength, external, setback } from './arcs.ts';
import { checkAfter, checkValue } from './checks.ts';
import { corners } from './frames.ts';
import type { Check, Job, Point, Units } from './job.ts';
import { cutLength, developedLength, type Mark, marks } from './marks.ts';
import { designGrowth, resolveShape } from './resolve.ts';
import { type Around, around, type TubeTurn, tubeTurn } from './turns.ts';
import type { Warning } from './warnings.ts';

export interface LayoutBend extends Around {
	/** From 1. */
	bend: number;
	angle: number;
	rotation: number;
	straight: number;
	arc: number;
	setback: number;
	external: number;
	mark: Mark;
	tubeTurn: TubeTurn;
}
export interface LayoutCheck {
	name: string;
	kind: Check['kind'];
	design: number;
	tolerance: number;
	after: number;
}

/** All that is to be known of a job before it is bent, unrounded; lengths in `units`, angles in degrees. */
export interface LayoutDocument {
	job: string;
	units: Units;
	developedLength: number;
	cutLength: number;
	bends: LayoutBend[];
	corners: Point[];
	checks: LayoutCheck[];
	warnings: Warning[];
}

/** The layout of a job as drawn, with the growth that its file states (1 where it states none). */
export function layout(job: Job, warnings: Warning[]): LayoutDocument {
	const shape = resolveShape(job, designGrowth(job));
	const cut = cutLength(job, shape);
	const mark = marks(job, shape, cut);
	const rotations = shape.bends.map((bend) => bend.rotation);
	return {
		job: job.name,
		units: job.units,
		developedLength: developedLength(job, shape),
		cutLength: cut,
		bends: shape.bends.map(({ angle, rotation, radius }, i) => ({
			bend: i + 1,
			angle,
			rotation,
			straight: shape.straights[i]!,
			arc: arcLength(angle, radius),
			setback: setback(angle, radius),
			external: external(angle, radius),
			mark: mark[i]!,
			...around(job, rotations, i + 1),
			tubeTurn: tubeTurn(rotation, i + 1),
		})),
		corners: corners(shape),
		checks: job.checks.map((check) => ({
			name: check.name,
			kind: check.kind,
			design: checkValue(check, shape, job.tube),
			tolerance: check.tolerance,
			after: checkAfter(check, shape.bends.length),
		})),
		warnings,
	};
}
