import type { Job } from './job.ts';
import { wholeTolerance } from './tolerance.ts';

/** What holds where a job does not say it. */
export const UNSAID = { mayOpen: true, quantity: 1 } as const satisfies Partial<Job>;

/** A job of an older log, in which what its version did not know is missing, with what holds where it is not said. */
export function wholeJob(job: Job): Job {
	return { ...UNSAID, ...job, tolerance: wholeTolerance(job.tolerance) };
}
