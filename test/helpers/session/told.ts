import { type Story, storyOf } from '../../../src/review/story.ts';
import type { State } from '../../../src/session/log/state.ts';
import type { Job } from '../../../src/tube/job.ts';
import { hatJob } from '../shop/hat.ts';
import { begin, give, type Run } from './session-run.ts';

/** An answer; a function gets the open ask. */
export type Given = unknown | ((run: Run) => unknown);

/** A session by these answers, of the hat where no job is given: its states and its story. Throws where one is refused. */
export function toldOf(job: Job, ...given: readonly Given[]): { states: State[]; story: Story } {
	let run = begin(job);
	const states = [run.state];
	for (const answer of given) {
		const before = run.state;
		run = give(run, typeof answer === 'function' ? answer(run) : answer);
		if (run.state === before)
			throw new Error(`${JSON.stringify(answer)} was refused: ${JSON.stringify(run.outputs[0])}`);
		states.push(run.state);
	}
	return { states, story: storyOf(states) };
}

export const told = (...given: readonly Given[]) => toldOf(hatJob(), ...given);

export const TO_FIRST_MEASURE: readonly Given[] = [
	{ ready: true },
	(run: Run) => ({ loaded: (run.outputs.at(-1) as { stop: number }).stop, released: 13.5 }),
];
