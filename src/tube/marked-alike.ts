import type { Job } from './job.ts';
import { cutLength, marks } from './marks.ts';
import { finishedShape } from './resolve.ts';

/** Whether a job of one die laid out with one growth is cut and marked as with the other, as far as its tape shows. */
export function isMarkedAlike(job: Job, one: number, other: number): boolean {
	const [a, b] = [one, other].map((value) => {
		const shape = finishedShape(job, { value });
		const cut = cutLength(job, shape);
		return [cut, ...marks(job, shape, cut).map(({ fromStart }) => fromStart)];
	});
	return a!.every((length, i) => Math.abs(length - b![i]!) <= job.tooling.tape);
}
