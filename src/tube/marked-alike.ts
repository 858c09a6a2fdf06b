import type { GrowthByDie } from './dies.ts';
import type { Job } from './job.ts';
import { cutLength, marks } from './marks.ts';
import { finishedShape } from './resolve.ts';

/** Whether a job laid out with one growth is cut and marked as with the other, as far as its tape shows. */
export function isMarkedAlike(job: Job, one: GrowthByDie, other: GrowthByDie): boolean {
	const [a, b] = [one, other].map((growth) => {
		const shape = finishedShape(job, growth);
		const cut = cutLength(job, shape);
		return [cut, ...marks(job, shape, cut).map(({ fromStart }) => fromStart)];
	});
	return a!.every((length, i) => Math.abs(length - b![i]!) <= job.tooling.tape);
}
