import { rawArc } from '../tube/arcs.ts';
import { checkValue } from '../tube/checks.ts';
import { toolingOf } from '../tube/dies.ts';
import type { Check, Job } from '../tube/job.ts';
import type { ArcBend, Shape } from '../tube/shape.ts';

/** One bend as it truly is, not as anybody believes it to be. */
export interface TrueBend {
	/** Where its mark truly is, from the raw start end. */
	mark: number;
	rotation: number;
	angle: number;
	/** Largest angle it ever had: so much of the tube is wrapped. */
	wrapped: number;
	/** Center-line radius at that angle. */
	radius: number;
}

/** The tube as it truly lies on the bench, ends uncut. Lengths in the job's unit. `piece`: length of the raw tube. */
export function trueShape(bends: readonly TrueBend[], piece: number, job: Job): Shape {
	const straights: number[] = [];
	const arcs: ArcBend[] = [];
	let end = 0;
	for (const [i, { mark, rotation, angle, wrapped, radius }] of bends.entries()) {
		const { stretch, markOffset } = toolingOf(job, i + 1);
		const from = mark + markOffset;
		straights.push(from - end);
		// What is opened keeps the tube it was wrapped with: its radius grows.
		arcs.push({ angle, rotation, radius: (radius * wrapped) / angle });
		end = from + rawArc(wrapped, radius, stretch);
	}
	return { straights: [...straights, piece - end], bends: arcs };
}

/** What a check would read on it without any error. */
export function trueCheck(check: Check, bends: readonly TrueBend[], piece: number, job: Job): number {
	return checkValue(check, trueShape(bends, piece, job), job.tube);
}
