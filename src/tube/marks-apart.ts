import type { GrowthByDie } from './dies.ts';
import type { Job } from './job.ts';
import { cutLength, marks } from './marks.ts';
import { finishedShape } from './resolve.ts';

/** By how much the cut length or a mark of a job laid out with one growth differs at most from those with the other. */
export function marksApart(job: Job, one: GrowthByDie, other: GrowthByDie): number {
	const [a, b] = [one, other].map((growth) => {
		const shape = finishedShape(job, growth);
		const cut = cutLength(job, shape);
		return [cut, ...marks(job, shape, cut).map(({ fromStart }) => fromStart)];
	});
	return Math.max(...a!.map((length, i) => Math.abs(length - b![i]!)));
}
