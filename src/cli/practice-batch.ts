import { SessionCache } from '../journal/kept-sessions.ts';
import type { LiveSession } from '../journal/live.ts';
import { newPieceOf } from '../journal/pieces.ts';
import type { JobFile, Surroundings } from '../journal/surroundings.ts';
import { nextPractice, type Practice, practiceHome } from '../practice/practice.ts';
import type { Batch } from '../session/batch/batch.ts';
import { batchAt } from './batch.ts';
import { lessonsFor } from './lessons-for.ts';
import { keptForStart } from './reading-logs.ts';

/** The tubes of one practice, one after the other on the same bender: each learns from those before it, and from no other practice. */
export interface PracticeBatch {
	now(): Practice;
	/** Begins the next tube. Throws as beginPractice. */
	next(): Practice;
	/** What the batch has come to once that session of it is over; null where it is a single tube. */
	come(session: LiveSession): Batch | null;
}

export function practiceBatch(first: Practice, file: JobFile, about: Surroundings): PracticeBatch {
	const own = practiceHome(about.home);
	const cache = new SessionCache(own);
	const ids = new Set([first.session.id]);
	// Each practice has another bender: what others left in this home is of no use.
	const rows = () => keptForStart(own, () => {}, cache).filter(({ id }) => ids.has(id));
	let now = first;
	return {
		now: () => now,
		next() {
			const before = rows();
			const piece = newPieceOf({ home: own }, before, file.job);
			now = nextPractice(now, file, about, { lessons: lessonsFor(own, before), piece });
			ids.add(now.session.id);
			return now;
		},
		come: batchAt(own, rows),
	};
}
