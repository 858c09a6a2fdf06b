import { bentAsOf } from '../tube/bent-as.ts';
import type { BentAs, Job } from '../tube/job.ts';

/** How a job differs from its drawing, in sentences; null where it is bent as drawn. */
export const bentAsWords = (job: Job): string | null => asWords(bentAsOf(job)) || null;

export function asWords({ mirror, from }: BentAs): string {
	const hand = mirror ? ["The opposite part: the drawing's mirror image."] : [];
	const end =
		from === 'far' ? ["Begun at the drawing's far end: that is the start end here, and its last bend is bend 1."] : [];
	return [...hand, ...end].join(' ');
}

/** The same in a few words behind a job's name, as lists have it; empty where it is bent as drawn. */
export function bentAsBrief(as: BentAs | undefined): string {
	const told = [as?.mirror ? 'opposite part' : '', as?.from === 'far' ? 'from the far end' : ''];
	const words = told.filter((text) => text !== '').join(', ');
	return words === '' ? '' : ` (${words})`;
}
