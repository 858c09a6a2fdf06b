import { GENERAL_CAUTIONS } from '../../../session/protocol/facts/caution.ts';
import type { SessionNote, WarningsNote } from '../../../session/protocol/notes.ts';
import { bentAsWords } from '../../../words/bent-as.ts';
import { cautionWords } from '../../../words/caution.ts';
import { warningWords } from '../../../words/warnings.ts';
import { chopped, type Line, line, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { type PageView, STAR } from './page.ts';

const GO_ON = { label: 'go on', step: { step: 'next' } } as const;

/** The session's first page: which one it is, and what is dangerous about the work. */
export function startPage(state: SessionState, note: SessionNote): PageView {
	return {
		title: note.resumed ? 'Session goes on' : 'New session',
		prompt: { label: '', plus: { label: 'understood, go on', step: { step: 'next' } }, empty: 'Press + to go on.' },
		body: (room) => [
			{
				rank: 0,
				lines: GENERAL_CAUTIONS.flatMap((code) =>
					wrapped(`! ${cautionWords({ code }, state.job)}`, room.columns, 'alert', 2),
				),
			},
			{ rank: 0, lines: wrapped(bentAsWords(state.job) ?? '', room.columns, 'strong') },
			{ rank: 1, lines: changes(note, room.columns) },
			{ rank: 2, lines: chopped(`Log: ${note.log}`, room.columns, 'quiet') },
			{ rank: 3, lines: wrapped(state.job.notes, room.columns, 'quiet') },
		],
	};
}

function changes({ changed, others }: SessionNote, columns: number): Line[] {
	const fields =
		changed.length === 0
			? []
			: [`The job file has changed since at ${changed.join(', ')}; this session keeps the job it was started with.`];
	const left = others.length === 0 ? [] : [`Also unfinished for this job: ${others.join(', ')}.`];
	return [...fields, ...left].flatMap((text) => wrapped(text, columns, 'plain', 2));
}

/** What the job file was warned about, before the first mark. */
export function warningsPage({ job }: SessionState, note: WarningsNote): PageView {
	return {
		title: `Warnings (${note.warnings.length})`,
		prompt: { label: '', plus: GO_ON, empty: 'Press + to bend all the same; * has leave.', star: STAR },
		body: (room) => [
			{
				rank: 0,
				lines: note.warnings.flatMap((warning) =>
					wrapped(`! ${warning.at}: ${warningWords(warning, job)}`, room.columns, 'alert', 2),
				),
			},
			{ rank: 1, lines: [line('The tube can be bent all the same if you know better.', 'quiet')] },
		],
	};
}
