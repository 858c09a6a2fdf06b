import type { DoneNote } from '../../../session/protocol/notes.ts';
import { mayFit } from '../../../session/report/verdict.ts';
import { nextWords, walkWords } from '../../../words/batch.ts';
import { cutBrieflyWords, cutOffWords, finishWords } from '../../../words/finish.ts';
import type { ShownJob } from '../../../words/lengths.ts';
import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS } from '../../../words/screen/usual.ts';
import { BENDS_MADE, checkRead, cornerOff, DONE, endOff, soFarWords } from '../../../words/session/done.ts';
import { logAt } from '../../../words/session/start.ts';
import { invitation, outsideWords, verdictWords } from '../../../words/verdict.ts';
import type { Choice } from '../../shell/prompt.ts';
import { chopped, type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { type PageView, type Section, SLASH } from './page.ts';

const FINISH = { label: DONE.finish, step: { step: 'leave' } } as const;

/** The next piece of a batch that is not whole; null where nothing is wanted after this tube. */
function nextStep({ batch }: SessionState): { label: string; step: SessionStep } | null {
	const next = batch?.next ?? null;
	if (batch === null || next === null) return null;
	return {
		label: nextWords(next, batch.pieces.wanted),
		step: { step: 'follow', id: next.do === 'begin' ? null : next.id },
	};
}

/** How many are made, and which bend walks off. */
function batchSoFar({ batch, piece }: SessionState, columns: number): Line[] {
	if (batch === null) return [];
	return [
		...wrapped(soFarWords(batch, piece), columns),
		...batch.bends.flatMap(({ bend, walks }) =>
			walks === null ? [] : wrapped(`! ${walkWords(bend, walks)}`, columns, 'alert', 2),
		),
	];
}

/** What can be done at the end besides what `+` does. */
function furtherChoices(state: SessionState, note: DoneNote): Choice<SessionStep>[] {
	const { batch, practice } = state;
	const next = nextStep(state);
	const another: Choice<SessionStep> = { label: DONE.another, step: { step: 'follow', id: null } };
	return [
		...(next === null ? [] : [{ ...next, advised: true }]),
		...(practice || batch?.next?.do === 'begin' ? [] : [another]),
		{ ...FINISH, ...(next === null && { advised: true }) },
		...(batch === null
			? []
			: [{ label: DONE.batch, step: { step: 'page', page: { page: 'batch', note } } } as Choice<SessionStep>]),
	];
}

/** How the tube came out. */
export function donePage(state: SessionState, note: DoneNote): PageView {
	return {
		title: DONE.title(note.scrapped),
		prompt: {
			label: '',
			plus: nextStep(state) ?? FINISH,
			slash: SLASH,
			star: { label: KEY_SAYS.more, step: { step: 'page', page: { page: 'cuts', note } } },
			empty: DONE.empty(nextStep(state) !== null, !state.practice),
		},
		body: ({ columns, rows }) => {
			const told = [
				[...verdict(note, state.job, columns), ...cornerLines(note, state.job, columns)],
				batchSoFar(state, columns),
				bends(note),
				checks(note, state.job),
			];
			const left = rows - told.flat().length;
			const whole = cuts(note, state.job, columns);
			const cut = whole.length <= left ? whole : cuts(note, state.job, columns, cutBrieflyWords);
			return [...told.map((lines): Section => ({ rank: 0, lines })), ...last(state, note, columns, cut)];
		},
	};
}

/** What is still to be done to the tube: where to cut, and what to look at. */
export function cutsPage(state: SessionState, note: DoneNote): PageView {
	return {
		title: DONE.cuts(note.scrapped),
		prompt: {
			label: CHOICE,
			choices: furtherChoices(state, note),
			back: { label: KEY_SAYS.back, step: { step: 'page', page: { page: 'done', note } } },
			empty: CHOOSE_OR_BACK,
		},
		body: ({ columns }) =>
			last(state, note, columns, cuts(note, state.job, columns), cornerLines(note, state.job, columns)),
	};
}

/** `cut`: where to cut; `also`: what is told beside how far off the far end is. */
function last(
	{ job }: SessionState,
	note: DoneNote,
	columns: number,
	cut: readonly Line[],
	also: readonly Line[] = [],
): Section[] {
	const looks = note.finish.flatMap((fact) => wrapped(`- ${finishWords(fact, job)}`, columns, 'plain', 2));
	return [
		{ rank: 2, lines: note.scrapped ? [] : [...farEndLines(note, job, columns), ...also] },
		{ rank: 1, lines: cut },
		{ rank: 3, lines: looks },
		{ rank: 4, extra: true, lines: chopped(logAt(note.log), columns, 'quiet') },
	];
}

function verdict({ scrapped, fits, chance, tellsMost, outside }: DoneNote, job: ShownJob, columns: number): Line[] {
	if (scrapped) return wrapped(DONE.scrap, columns, 'alert');
	const invited = invitation(fits, chance, tellsMost);
	const tone = fits ? 'good' : mayFit(fits, chance) ? 'alert' : 'wrong';
	return [
		...wrapped(verdictWords(fits, chance), columns, tone),
		...(chance === null ? [] : wrapped(outsideWords(outside, job), columns, outside.length > 0 ? 'alert' : 'plain')),
		...(invited === null
			? []
			: wrapped(`${invited} ${DONE.toTell[tellsMost?.kind === 'check' ? 'check' : 'evidence']}`, columns)),
	];
}

/** The widths of the columns, with the row's name as wide as the smallest window. */
const DONE_WIDTHS = [7, 7, 8, 9, 14, 6, 9];
const MADE_COLUMN = 3;

function bends({ bends: made }: DoneNote): Line[] {
	const cells = (texts: readonly string[]) =>
		texts.map((text, at) => (at === 0 ? text.padEnd(DONE_WIDTHS[at]!) : text.padStart(DONE_WIDTHS[at]!)));
	return [
		line(cells(BENDS_MADE.heads).join(''), 'quiet'),
		...made.map(
			(bend, at): Line =>
				cells(BENDS_MADE.row(bend, at + 1)).map((text, i) => span(text, i === MADE_COLUMN ? 'strong' : 'plain')),
		),
	];
}

function checks({ checks: all }: DoneNote, job: ShownJob): Line[] {
	return all.map((check) => {
		const [name, read, drawing] = checkRead(check, job);
		return [span(name), span(read, 'strong'), span(drawing)];
	});
}

function farEndLines({ endOffset, endAngle, sd }: DoneNote, job: ShownJob, columns: number): Line[] {
	if (endOffset === null || endAngle === null || sd === null) return [];
	return wrapped(endOff({ endOffset, endAngle, sd }, job), columns);
}

const cornerLines = ({ shape, scrapped }: DoneNote, job: ShownJob, columns: number): Line[] =>
	shape === null || scrapped ? [] : wrapped(cornerOff(shape, job), columns);

function cuts({ cuts: both }: DoneNote, job: ShownJob, columns: number, words = cutOffWords): Line[] {
	return both.flatMap((cut) => wrapped(words(cut, job), columns, 'plain', 2));
}
