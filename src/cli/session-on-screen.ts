import { homedir } from 'node:os';
import { dirname, relative } from 'node:path';
import { durablePlace } from '../files/durable.ts';
import type { LiveSession } from '../journal/live.ts';
import type { LivePort } from '../screen/session/live-port.ts';
import { amendPreview } from '../session/advice/amend-preview.ts';
import type { Batch } from '../session/batch/batch.ts';
import { heatOf } from '../session/batch/given.ts';
import { tubeAtWork } from '../session/estimate/tube-at-work.ts';
import { answered } from '../session/log/answered.ts';
import { undoable } from '../session/log/fold.ts';
import { halfAnswerOf } from '../session/log/half-answer.ts';
import type { Output } from '../session/protocol/notes.ts';
import { placedAt } from '../session/report/set-ups.ts';
import { journalWords } from '../words/journal.ts';
import { resumeCommand } from '../words/usage/screen.ts';

/** A session as the screen needs it. */
export function livePort(
	session: LiveSession,
	problems: readonly string[] = [],
	batch?: (session: LiveSession) => Batch | null,
): LivePort {
	const outputs: Output[] = [...session.opening];
	const { jobFile } = session.state.start;
	return {
		id: session.id,
		job: session.state.start.job,
		drawn: session.state.design.shape,
		get resume() {
			return resumeCommand(asFromHere(jobFile), session.id, session.untoldFolder);
		},
		get logPath() {
			return session.logPath;
		},
		outputs,
		ask: () => session.ask,
		answer(answer) {
			const added = session.answer(answer);
			outputs.push(...added);
			return added;
		},
		history: () => answered(session.state),
		pulls: () => session.state.bends[session.state.bend - 1]?.pulls ?? [],
		placed: () => placedAt(session.state),
		shape: () => tubeAtWork(session.state, session.state.plan.current).shape,
		heat: () => heatOf(session.state),
		...(batch && { batch: () => batch(session) }),
		wouldBe: (answer) => amendPreview(answer, session.state),
		undoable: () => undoable(session.state),
		draft: () => halfAnswerOf(session.state),
		get messages() {
			return [...problems, ...session.notices.map(journalWords)];
		},
		rescue: (folder) => session.rescue(folder),
		rescuePlace: () => durablePlace([dirname(jobFile), process.cwd(), homedir()], session.logPath),
		close: () => session.close(),
	};
}

/** A path as one types it in the folder in which the program runs. */
function asFromHere(path: string): string {
	const near = relative(process.cwd(), path);
	return near.startsWith('..') || near === '' ? path : near;
}
