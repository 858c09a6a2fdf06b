import type { Job } from './job.ts';
import { finishedShape } from './resolve.ts';

/** Where a growth comes from: the job file, what is kept of the die, or what is expected of it. */
export type GrowthSource = 'job' | 'die' | 'expected';

/** Finished center-line radius over the die's. */
export interface Growth {
	value: number;
	from: GrowthSource;
}

/** The growth that a job is planned with. `tooMuch`: the one expected, where the drawing's corners leave it no room. */
export interface PlannedGrowth extends Growth {
	tooMuch?: number;
}

/**
 * The growth that a job states, else the expected one; 1 where that would leave less than no straight somewhere. `stated`: where the job's own
 * comes from.
 */
export function plannedGrowth(job: Job, stated: 'job' | 'die', expected: number): PlannedGrowth {
	const { growth } = job.tooling;
	if (growth !== null) return { value: growth, from: stated };
	if (withoutRoom(job, expected).length === 0) return { value: expected, from: 'expected' };
	return { value: 1, from: 'expected', tooMuch: expected };
}

/** The straights, from 1, that arcs of this growth leave no room for. */
export function withoutRoom(job: Job, growth: number): number[] {
	return finishedShape(job, growth).straights.flatMap((straight, i) => (straight < 0 ? [i + 1] : []));
}
