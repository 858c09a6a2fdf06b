import { type Anew, reckonedAnew, type Start } from '../session/log/start.ts';
import type { Lesson } from '../springback/history.ts';

/** What takes the place of a prior of another model. */
export function anewOf(start: Start, lessonsBefore: (start: Start) => readonly Lesson[]): Anew {
	return reckonedAnew(start, start.learn ? lessonsBefore(start) : []);
}

/** Said once: the log holds it from then on. */
export function saidOf({ from }: Anew): string {
	const way = 'Pullbook now reckons springback another way than when this session began.';
	return from === undefined
		? `${way} Stops may differ: what earlier tubes taught does not count here.`
		: `${way} Stops may differ: it learned from the tubes before this one anew.`;
}
