import { readSession } from '../journal/catalogue.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { bendFigures, type Sessions } from '../review/plots.ts';
import { storyOf } from '../review/story.ts';
import type { Opened } from '../screen/review/review-port.ts';
import { DoesNotFollow, following, readBack, readThrough, UnknownRecord } from '../session/log/read-back.ts';
import { journalWords } from '../words/journal.ts';
import { localMinute } from '../words/local-time.ts';
import { wallClock } from './wall-clock.ts';

/** How many sessions of a job are shown beside one another: more would not be told apart, and each has to be read whole. */
const SESSIONS_SHOWN = 12;

/**
 * A kept session for the review on the screen. `rows`: all that are kept, newest first.
 * @throws JournalError, UnknownRecord or DoesNotFollow where nothing of it can be read
 */
export function openedSession(home: string, id: string, rows: () => readonly KeptRow[]): Opened {
	const { records, problem } = readSession(home, id);
	const states = readThrough(records);
	const story = following(() => storyOf(states));
	let sessions: Sessions | null = null;
	return {
		id,
		started: localMinute(story.view.started, wallClock),
		story,
		states,
		problem: problem === null ? null : journalWords(problem),
		time: (iso) => wallClock(iso)?.time ?? iso,
		sessions() {
			sessions ??= [...earlier(home, id, rows()), bendFigures(story.state)];
			return sessions;
		},
	};
}

/** What the bends of its job's sessions before it came to, the oldest first; a log that cannot be folded tells nothing here. */
function earlier(home: string, id: string, rows: readonly KeptRow[]): Sessions {
	const own = rows.find((row) => row.id === id);
	const before = rows.filter(({ job, at }) => job?.file === own?.job?.file && job !== null && at < (own?.at ?? ''));
	return before
		.slice(0, SESSIONS_SHOWN - 1)
		.reverse()
		.flatMap((row) => {
			try {
				return [bendFigures(readBack(readSession(home, row.id).records))];
			} catch (error) {
				if (error instanceof UnknownRecord || error instanceof DoesNotFollow) return [];
				throw error;
			}
		});
}
