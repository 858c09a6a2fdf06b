import { type Anew, reckonedAnew, type Start } from '../session/log/start.ts';
import type { Lesson } from '../springback/history.ts';
import type { JournalNotice } from './facts.ts';

/** What takes the place of a prior of another model. */
export function anewOf(start: Start, lessonsBefore: (start: Start) => readonly Lesson[]): Anew {
	return reckonedAnew(start, start.learn ? lessonsBefore(start) : []);
}

/** Told once: the log holds it from then on. */
export function anewNotice({ from }: Anew): JournalNotice {
	return { code: 'reckoned-anew', learned: from !== undefined };
}
