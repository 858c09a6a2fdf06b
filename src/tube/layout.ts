import { arcLength, external, setback } from './arcs.ts';
import { bentAsField } from './bent-as.ts';
import { checkAfter, checkValue } from './checks.ts';
import { dieOf, hasSeveralDies } from './dies.ts';
import { cornersOn, frames } from './frames.ts';
import type { Growth } from './growth.ts';
import type { BentAs, Check, EndName, Job, Point, Units } from './job.ts';
import { cutLength, developedLength, type Mark, marks } from './marks.ts';
import { type Overall, overall } from './overall.ts';
import { finishedShape } from './resolve.ts';
import { type Swing, swing } from './swing.ts';
import { type Around, around, type TubeTurn, tubeTurn } from './turns.ts';
import type { Hindrance, Warning } from './warnings.ts';

export interface LayoutBend extends Around {
	/** From 1. */
	bend: number;
	angle: number;
	rotation: number;
	straight: number;
	arc: number;
	setback: number;
	external: number;
	/** Finished center-line radius. */
	radius: number;
	/** The die it is bent on, where a bend of the job names another than its own. */
	die?: string;
	mark: Mark;
	tubeTurn: TubeTurn;
	swing: Swing;
}

/** An end of the drawing to begin at. */
export interface EndChoice {
	/** Clamp, tube behind the last bend and floor leave room for every bend. */
	possible: boolean;
	/** What does not. */
	hindrances: Hindrance[];
	/** What the bends to come could not take back, in units of the tolerances. */
	left: number;
}

/** The drawing's two ends, and which is the better one to begin at; null: they are alike. */
export interface Ends extends Record<EndName, EndChoice> {
	better: EndName | null;
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
	growth: Growth;
	developedLength: number;
	cutLength: number;
	bends: LayoutBend[];
	corners: Point[];
	/** The finished tube's size. */
	overall: Overall;
	checks: LayoutCheck[];
	warnings: Warning[];
	/** Where it is not bent as drawn. */
	bentAs?: BentAs;
	ends: Ends;
}

/** The layout of a job as it is to be bent, its arcs of this growth between the drawing's corners. */
export function layout(job: Job, growth: Growth, warnings: Warning[], ends: Ends): LayoutDocument {
	const shape = finishedShape(job, growth);
	const laid = frames(shape);
	const cut = cutLength(job, shape);
	const mark = marks(job, shape, cut);
	const rotations = shape.bends.map((bend) => bend.rotation);
	return {
		job: job.name,
		units: job.units,
		growth: growthTold(growth),
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
			radius,
			...(hasSeveralDies(job) ? { die: dieOf(job, i + 1) } : {}),
			mark: mark[i]!,
			...around(job, rotations, i + 1),
			tubeTurn: tubeTurn(rotation, i + 1),
			swing: swing(shape, i + 1, { od: job.tube.od, trim: job.trim.start }, laid),
		})),
		corners: cornersOn(laid),
		overall: overall(laid, job.tube.od),
		checks: job.checks.map((check) => ({
			name: check.name,
			kind: check.kind,
			design: checkValue(check, shape, job.tube),
			tolerance: check.tolerance,
			after: checkAfter(check, shape.bends.length),
		})),
		warnings,
		...bentAsField(job),
		ends,
	};
}

function growthTold({ value, from, dies }: Growth): Growth {
	if (dies === undefined) return { value, from };
	const each = Object.entries(dies).map(([die, { value, from }]) => [die, { value, from }]);
	return { value, from, dies: Object.fromEntries(each) };
}
