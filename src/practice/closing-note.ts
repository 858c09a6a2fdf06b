import type { DoneNote } from '../session/protocol/notes.ts';
import type { PracticeStep } from './practice.ts';

/** The closing note; null where the session has not ended. */
export function doneOf(steps: readonly PracticeStep[]): DoneNote | null {
	const last = steps.at(-1)?.outputs.at(-1);
	return last && 'note' in last && last.note === 'done' ? last : null;
}
