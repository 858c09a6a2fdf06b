import { fromFar } from './from-far.ts';
import type { BentAs, Job } from './job.ts';
import { mirrored } from './mirror.ts';

/** The job for the other hand, from the other end, or both; which is done first makes no difference. */
export function asBent(job: Job, { mirror, from }: BentAs): Job {
	const hand = mirror ? mirrored(job) : job;
	return from === 'far' ? fromFar(hand) : hand;
}
