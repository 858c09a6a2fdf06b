import { doneOf } from '../practice/closing-note.ts';
import type { PracticeStep } from '../practice/practice.ts';
import type { Job } from '../tube/job.ts';
import { asLine } from './line-mode.ts';

/** One tube of a practice, from its first ask to its last. */
export interface PlayedTube {
	/** Which of its batch. */
	piece?: number;
	steps: readonly PracticeStep[];
	trueAngles: readonly number[];
}

/** A whole practice as one document: the first tube, and of a batch the tubes `further` on. */
export function practiceDocument(seed: number, job: Job, [first, ...further]: readonly PlayedTube[]) {
	return {
		job: job.name,
		seed,
		...playedTubeDocument(first!, job),
		...(further.length === 0 ? {} : { further: further.map((tube) => playedTubeDocument(tube, job)) }),
	};
}

function playedTubeDocument({ piece, steps, trueAngles }: PlayedTube, job: Job) {
	const done = doneOf(steps);
	return {
		...(piece !== undefined && { piece }),
		steps: steps.map(({ ask, action, outputs }) => {
			const notes = outputs.filter((output) => 'note' in output && output.note !== 'done');
			return { ask: asLine(ask, job), action, notes: notes.map((note) => asLine(note, job)) };
		}),
		trueAngles,
		done: done && asLine(done, job),
	};
}
