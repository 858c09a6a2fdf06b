import type { BentAs, Job } from './job.ts';

/** How a job is bent, also where that is as drawn. */
export const bentAsOf = (job: Job): BentAs => job.bentAs ?? { mirror: false, from: 'start' };

/** The field of a document that says so, where there is anything to say. */
export const bentAsField = ({ bentAs }: Job): { bentAs?: BentAs } => (bentAs === undefined ? {} : { bentAs });

/** How a job differs from its drawing, in sentences; null where it is bent as drawn. */
export function bentAsWords(job: Job): string | null {
	const { mirror, from } = bentAsOf(job);
	const hand = mirror ? ["The opposite part: the drawing's mirror image."] : [];
	const end =
		from === 'far' ? ["Begun at the drawing's far end: that is the start end here, and its last bend is bend 1."] : [];
	return hand.length + end.length === 0 ? null : [...hand, ...end].join(' ');
}

/** The same in a few words behind a job's name, as lists have it; empty where it is bent as drawn. */
export function bentAsBrief(as: BentAs | undefined): string {
	const told = [as?.mirror ? 'opposite part' : '', as?.from === 'far' ? 'from the far end' : ''];
	const words = told.filter((text) => text !== '').join(', ');
	return words === '' ? '' : ` (${words})`;
}

/** The job with what it says about how it is bent changed; a job that is bent as drawn says nothing. */
export function toldAs(job: Job, change: (was: BentAs) => BentAs): Job {
	const { bentAs: _, ...drawn } = job;
	const as = change(bentAsOf(job));
	return as.mirror || as.from === 'far' ? { ...drawn, bentAs: as } : drawn;
}
