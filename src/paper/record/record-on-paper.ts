import type { Imported } from '../../journal/import-mark.ts';
import type { CorrectionStory } from '../../review/story.ts';
import type { State } from '../../session/log/state.ts';
import type { SessionView } from '../../session/report/views.ts';
import type { WallClock } from '../../words/local-time.ts';

/** All that the pages of a session's record are made from. */
export interface RecordOnPaper {
	state: State;
	view: SessionView;
	corrections: readonly CorrectionStory[];
	/** Where it was taken over from; null where it was bent here. */
	imported: Imported | null;
	/** The log's file, how many of its lines are whole, and their SHA-256 in hexadecimal digits. */
	log: { path: string; lines: number; sha256: string };
	/** What is wrong with the log, as a sentence; null where nothing is. */
	problem: string | null;
	clock: WallClock;
	/** How it came about, for the foot of each page. */
	foot: string;
}

/** What each part of the record is given. */
export interface RecordPart {
	of: RecordOnPaper;
	/** Points. */
	width: number;
}
