import { doneOf } from '../practice/done.ts';
import type { PracticeStep } from '../practice/practice.ts';
import type { Job } from '../tube/job.ts';
import { asLine } from './line.ts';

/** A whole practice session as one document. */
export function practiceDocument(
	seed: number,
	job: Job,
	steps: readonly PracticeStep[],
	trueAngles: readonly number[],
) {
	const done = doneOf(steps);
	return {
		job: job.name,
		seed,
		steps: steps.map(({ ask, action, outputs }) => {
			const notes = outputs.filter((output) => 'note' in output && output.note !== 'done');
			return { ask: asLine(ask, job), action, notes: notes.map((note) => asLine(note, job)) };
		}),
		trueAngles,
		done: done && asLine(done, job),
	};
}
