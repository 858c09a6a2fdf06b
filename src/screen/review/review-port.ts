import type { Sessions } from '../../review/plots.ts';
import type { Story } from '../../review/story.ts';
import type { State } from '../../session/log/state.ts';

/** A kept session that is open for review. */
export interface Opened {
	id: string;
	/** When it began, as a person reads it. */
	started: string;
	story: Story;
	/** The session as it began and after each line of its log. */
	states: readonly State[];
	/** Why it cannot be gone on with, in a sentence; null when it can. */
	problem: string | null;
	/** A moment as the clock on the wall had it; the text itself where it is none. */
	time(iso: string): string;
	/** Its job's sessions up to this one, the oldest first; they are read when that is asked for first. */
	sessions(): Sessions;
}
