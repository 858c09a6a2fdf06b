import { GENERAL_CAUTIONS } from '../../../session/protocol/facts/caution.ts';
import type { SessionNote, WarningsNote } from '../../../session/protocol/notes.ts';
import { capital } from '../../../units/format.ts';
import { pieceWords } from '../../../words/batch.ts';
import { bentAsWords } from '../../../words/bent-as.ts';
import { cautionWords } from '../../../words/caution.ts';
import { foreignName } from '../../../words/foreign.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { warningWords } from '../../../words/warnings.ts';
import { chopped, type Line, line, wrapped } from '../../text/line.ts';
import type { Page, SessionState } from '../session-state.ts';
import { layoutSections } from './lay-out.ts';
import { answer, type PageView, type Room, type Section } from './page.ts';

type Start = Extract<Page, { page: 'start' }>;

/** The session's first page: which one it is, what is dangerous about the work, what was warned of, and with room for it the marks. */
export function startPage(state: SessionState, page: Start): PageView {
	const { note, warnings, layout } = page;
	const toHeed = page.cautions || warnings !== null;
	return {
		title: titleOf(state, note),
		prompt: {
			label: '',
			plus: { label: layout ? 'laid out, go on' : toHeed ? 'understood, go on' : 'go on', step: { step: 'next' } },
			star: { label: 'more', step: { step: 'page', page: { page: 'atStart', from: page } } },
			empty: warnings === null ? 'Press + to go on.' : 'Press + to bend all the same; * has leave.',
		},
		body: (room) => [
			...heeded(state, page, room),
			...about(state, note, room),
			...(layout ? layoutSections(state, room) : []),
			{ rank: 1, lines: changes(note, room.columns) },
			{ rank: 4, extra: layout, lines: chopped(`Log: ${note.log}`, room.columns, 'quiet') },
			{ rank: 5, extra: layout, lines: wrapped(state.job.notes, room.columns, 'quiet') },
		],
	};
}

function titleOf({ piece }: SessionState, note: SessionNote): string {
	if (note.resumed) return 'Session goes on';
	return piece === null ? 'New session' : capital(pieceWords(piece));
}

/** The cautions one under the other, or where the marks stand below them one after the other. */
function heeded({ job }: SessionState, { cautions, warnings, layout }: Start, { columns }: Room): Section[] {
	const said = cautions ? GENERAL_CAUTIONS.map((code) => cautionWords({ code }, job)) : [];
	const items = layout && said.length > 0 ? [said.join(' ')] : said;
	return [
		{ rank: 0, lines: items.flatMap((text) => wrapped(`! ${text}`, columns, 'alert', 2)) },
		...(warnings === null ? [] : warned(warnings, job, columns)),
	];
}

/** What the job file was warned about, before the first mark. */
function warned({ warnings }: WarningsNote, job: SessionState['job'], columns: number): Section[] {
	return [
		{
			rank: 0,
			lines: warnings.flatMap((warning) => wrapped(`! ${warningWords(warning, job)}`, columns, 'alert', 2)),
		},
		{ rank: 2, lines: [line('The tube can be bent all the same if you know better.', 'quiet')] },
	];
}

function about({ job, heat }: SessionState, { alike }: SessionNote, { columns }: Room): Section[] {
	const marks =
		alike === undefined
			? []
			: alike
				? wrapped('Same cut and marks as the piece before.', columns, 'good')
				: wrapped(
						'! Other marks than the piece before, which told the radius: mark this tube anew.',
						columns,
						'alert',
						2,
					);
	return [
		{ rank: 0, lines: [...wrapped(bentAsWords(job) ?? '', columns, 'strong'), ...marks] },
		{ rank: 1, lines: heat === null ? [] : wrapped(`Heat ${foreignName(heat)}. Is it another? * tells it.`, columns) },
	];
}

function changes({ changed, others }: SessionNote, columns: number): Line[] {
	const fields =
		changed.length === 0
			? []
			: [`The job file has changed since at ${changed.join(', ')}; this session keeps the job it was started with.`];
	const left = others.length === 0 ? [] : [`Also unfinished for this job: ${others.join(', ')}.`];
	return [...fields, ...left].flatMap((text) => wrapped(text, columns, 'plain', 2));
}

/** What can be done before the first mark besides going on. */
export function atStartPage({ practice }: SessionState, from: Page): PageView {
	return {
		title: 'More',
		prompt: {
			label: CHOICE,
			choices: [
				{ label: TELL_HEAT, step: { step: 'page', page: { page: 'text', purpose: 'heat', value: '', from } } },
				{
					label: practice ? 'leave: practice cannot be resumed' : 'leave, to go on another time',
					step: answer({ do: 'quit' }),
				},
				{ label: 'help', step: { step: 'page', page: { page: 'help', from } } },
			],
			back: { label: 'back', step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

export const TELL_HEAT = 'tell the heat or certificate number of this tube';
