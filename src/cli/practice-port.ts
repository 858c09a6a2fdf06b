import type { JobFile, Surroundings } from '../journal/surroundings.ts';
import { type Practice, practiceHome } from '../practice/practice.ts';
import type { HomePort } from '../screen/home/home-port.ts';
import type { LivePort } from '../screen/session/live-port.ts';
import { sightInWords } from '../words/practice.ts';
import { PRACTICE } from '../words/practice-report.ts';
import { type PracticeBatch, practiceBatch } from './practice-batch.ts';
import { openedSession } from './review-on-screen.ts';
import { livePort } from './session-on-screen.ts';
import { workshopAt } from './workshop.ts';

/** A home with nothing in it but this practice: one session, and of a job of several pieces one after the other. */
export function practicePort(first: Practice, file: JobFile, about: Surroundings): HomePort & { now(): Practice } {
	const { home } = about;
	const own = practiceHome(home);
	const batch = practiceBatch(first, file, about);
	return {
		now: batch.now,
		jobs: () => [],
		sessions: () => [],
		openSession: async () => watched(batch),
		async another() {
			batch.next();
			return watched(batch);
		},
		story: (id) => openedSession(own, id, () => []),
		review: () => [],
		benders: async () => [PRACTICE.keptIn(own)],
		printSheet: async (path) => (await import('./paper.ts')).saveSheet(path, null, home),
		printRecord: async (id) => (await import('./paper-record.ts')).saveRecord(id, own),
		workshop: workshopAt(home, { own: 'jobs', samples: null }),
	};
}

/** The session, with a sentence at every ask that says what the instruments show. */
function watched(batch: PracticeBatch): LivePort {
	const { session, station } = batch.now();
	const port = livePort(session, [], batch.come);
	return Object.defineProperties(
		{
			...port,
			// A simulated bender forgets its tube.
			resume: undefined,
			answer(answer: Parameters<LivePort['answer']>[0]) {
				const { ask } = session;
				const outputs = port.answer(answer);
				const refused = outputs.some((output) => 'note' in output && output.note === 'refused');
				if (ask !== null && answer.action !== null && !refused) station.did(ask, answer.action);
				return outputs;
			},
			sight() {
				const { ask } = session;
				return ask === null ? null : sightInWords(ask, station.see(ask), port.job);
			},
		},
		{ logPath: { get: () => port.logPath } },
	);
}
