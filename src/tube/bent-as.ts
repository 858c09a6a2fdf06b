import type { BentAs, Job } from './job.ts';

/** How a job is bent, also where that is as drawn. */
export const bentAsOf = (job: Job): BentAs => job.bentAs ?? { mirror: false, from: 'start' };

/** The field of a document that says so, where there is anything to say. */
export const bentAsField = ({ bentAs }: Job): { bentAs?: BentAs } => (bentAs === undefined ? {} : { bentAs });

export const isAsDrawn = ({ mirror, from }: BentAs): boolean => !mirror && from === 'start';

/** The job with what it says about how it is bent changed; a job that is bent as drawn says nothing. */
export function toldAs(job: Job, change: (was: BentAs) => BentAs): Job {
	const { bentAs: _, ...drawn } = job;
	const as = change(bentAsOf(job));
	return isAsDrawn(as) ? drawn : { ...drawn, bentAs: as };
}
