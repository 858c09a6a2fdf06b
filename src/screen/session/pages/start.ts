import { GENERAL_CAUTIONS } from '../../../session/protocol/facts/caution.ts';
import type { SessionNote, WarningsNote } from '../../../session/protocol/notes.ts';
import { bentAsWords } from '../../../words/bent-as.ts';
import { cautionWords } from '../../../words/caution.ts';
import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS, MORE_TITLE } from '../../../words/screen/usual.ts';
import { MORE } from '../../../words/session/more.ts';
import { logAt, START } from '../../../words/session/start.ts';
import { warningWords } from '../../../words/warnings.ts';
import { chopped, type Line, line, wrapped } from '../../text/line.ts';
import type { Page, SessionState } from '../session-state.ts';
import { layoutSections } from './lay-out.ts';
import { answer, type PageView, type Room, type Section } from './page.ts';

type StartPage = Extract<Page, { page: 'start' }>;

/** The session's first page: which one it is, what is dangerous about the work, what was warned of, and with room for it the marks. */
export function startPage(state: SessionState, page: StartPage): PageView {
	const { note, warnings, layout } = page;
	const toHeed = page.cautions || warnings !== null;
	return {
		title: START.title(state.piece, note.resumed),
		prompt: {
			label: '',
			plus: { label: layout ? START.laidOut : toHeed ? START.understood : KEY_SAYS.goOn, step: { step: 'next' } },
			star: { label: KEY_SAYS.more, step: { step: 'page', page: { page: 'atStart', from: page } } },
			empty: START.empty(warnings !== null),
		},
		body: (room) => [
			...heeded(state, page, room),
			...aboutTube(state, note, room),
			...(layout ? layoutSections(state, room) : []),
			{ rank: 1, lines: changedFieldLines(note, room.columns) },
			{ rank: 4, extra: layout, lines: chopped(logAt(note.log), room.columns, 'quiet') },
			{ rank: 5, extra: layout, lines: wrapped(state.job.notes, room.columns, 'quiet') },
		],
	};
}

/** The cautions one under the other, or where the marks stand below them one after the other. */
function heeded({ job }: SessionState, { cautions, warnings, layout }: StartPage, { columns }: Room): Section[] {
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
		{ rank: 2, lines: [line(START.allTheSame, 'quiet')] },
	];
}

function aboutTube({ job, heat }: SessionState, { alike, wouldMove }: SessionNote, { columns }: Room): Section[] {
	const marks =
		alike === undefined
			? []
			: alike
				? wrapped(START.alike, columns, 'good')
				: wrapped(START.otherMarks, columns, 'alert', 2);
	return [
		{ rank: 0, lines: [...wrapped(bentAsWords(job) ?? '', columns, 'strong'), ...marks] },
		{ rank: 2, lines: wouldMove === undefined ? [] : wrapped(START.wouldMove(wouldMove, job), columns) },
		{ rank: 1, lines: heat === null ? [] : wrapped(START.heat(heat), columns) },
	];
}

function changedFieldLines({ changed, others }: SessionNote, columns: number): Line[] {
	const fields = changed.length === 0 ? [] : [START.changed(changed)];
	const left = others.length === 0 ? [] : [START.others(others)];
	return [...fields, ...left].flatMap((text) => wrapped(text, columns, 'plain', 2));
}

/** What can be done before the first mark besides going on. */
export function atStartPage({ practice }: SessionState, from: Page): PageView {
	return {
		title: MORE_TITLE,
		prompt: {
			label: CHOICE,
			choices: [
				{ label: MORE.heat, step: { step: 'page', page: { page: 'text', purpose: 'heat', value: '', from } } },
				{ label: MORE.leave(practice), step: answer({ do: 'quit' }) },
				{ label: KEY_SAYS.help, step: { step: 'page', page: { page: 'help', from } } },
			],
			back: { label: KEY_SAYS.back, step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}
