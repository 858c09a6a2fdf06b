import type { DoneNote } from '../../../session/protocol/notes.ts';
import { mayFit } from '../../../session/report/verdict.ts';
import type { Job } from '../../../tube/job.ts';
import { capital } from '../../../units/format.ts';
import { madeWords, nextWords, pieceWords, walkWords } from '../../../words/batch.ts';
import { finishWords } from '../../../words/finish.ts';
import { about, angle, fine, measureOf, readingSpread, shown, tape } from '../../../words/numbers.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { invitation, outsideWords, verdictWords } from '../../../words/verdict.ts';
import type { Choice } from '../../shell/prompt.ts';
import { chopped, type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { type PageView, type Section, SLASH } from './page.ts';

const FINISH = { label: 'finish', step: { step: 'leave' } } as const;

/** The next piece of a batch that is not whole; null where nothing is wanted after this tube. */
function nextStep({ batch }: SessionState): { label: string; step: Step } | null {
	const next = batch?.next ?? null;
	if (batch === null || next === null) return null;
	return {
		label: nextWords(next, batch.pieces.wanted),
		step: { step: 'follow', id: next.do === 'begin' ? null : next.id },
	};
}

/** How many are made, and which bend walks off. */
function batchLines({ batch, piece }: SessionState, columns: number): Line[] {
	if (batch === null) return [];
	const which = piece === null ? '' : `${capital(pieceWords(piece))}; `;
	return [
		...wrapped(`${which}${madeWords(batch.pieces)}.`, columns),
		...batch.bends.flatMap(({ bend, walks }) =>
			walks === null ? [] : wrapped(`! ${walkWords(bend, walks)}`, columns, 'alert', 2),
		),
	];
}

/** What can be done at the end besides what `+` does. */
function furtherChoices(state: SessionState, note: DoneNote): Choice<Step>[] {
	const { batch, practice } = state;
	const next = nextStep(state);
	const another: Choice<Step> = { label: 'another of the same', step: { step: 'follow', id: null } };
	return [
		...(next === null ? [] : [{ ...next, advised: true }]),
		...(practice || batch?.next?.do === 'begin' ? [] : [another]),
		{ ...FINISH, ...(next === null && { advised: true }) },
		...(batch === null
			? []
			: [{ label: 'the batch so far', step: { step: 'page', page: { page: 'batch', note } } } as Choice<Step>]),
	];
}

/** How the tube came out. */
export function donePage(state: SessionState, note: DoneNote): PageView {
	return {
		title: note.scrapped ? 'Scrapped' : 'Done',
		prompt: {
			label: '',
			plus: nextStep(state) ?? FINISH,
			slash: SLASH,
			star: { label: 'more', step: { step: 'page', page: { page: 'cuts', note } } },
			empty:
				nextStep(state) !== null
					? 'Press + for the next piece; * has finish.'
					: `Press + to finish${state.practice ? '' : '; * has another of the same'}.`,
		},
		body: (room) => [
			{ rank: 0, lines: verdict(note, state.job, room.columns) },
			{ rank: 0, lines: batchLines(state, room.columns) },
			{ rank: 0, lines: bends(note) },
			{ rank: 0, lines: checks(note, state.job) },
			...last(state, note, room.columns),
		],
	};
}

/** What is still to be done to the tube: where to cut, and what to look at. */
export function cutsPage(state: SessionState, note: DoneNote): PageView {
	return {
		title: note.scrapped ? 'More' : 'Cuts and last looks',
		prompt: {
			label: CHOICE,
			choices: furtherChoices(state, note),
			back: { label: 'back', step: { step: 'page', page: { page: 'done', note } } },
			empty: CHOOSE_OR_BACK,
		},
		body: (room) => last(state, note, room.columns),
	};
}

function last({ job }: SessionState, note: DoneNote, columns: number): Section[] {
	const looks = note.finish.flatMap((fact) => wrapped(`- ${finishWords(fact, job)}`, columns, 'plain', 2));
	return [
		{ rank: 1, lines: note.scrapped ? [] : ends(note, job, columns) },
		{ rank: 2, lines: cuts(note, job, columns) },
		{ rank: 3, lines: looks },
		{ rank: 4, extra: true, lines: chopped(`Log: ${note.log}`, columns, 'quiet') },
	];
}

/** The last acceptance is taken back, and what was measured told before the bend is accepted again; a check that was skipped has its own question. */
const HOW = {
	check: 'To tell it: / and + back to its question.',
	evidence: 'To tell it: / and +, then * and 3.',
} as const;

function verdict({ scrapped, fits, chance, tellsMost, outside }: DoneNote, job: Job, columns: number): Line[] {
	if (scrapped) return wrapped('The tube is scrap; its readings are kept.', columns, 'alert');
	const invited = invitation(fits, chance, tellsMost);
	const tone = fits ? 'good' : mayFit(fits, chance) ? 'alert' : 'wrong';
	return [
		...wrapped(verdictWords(fits, chance), columns, tone),
		...(chance === null ? [] : wrapped(outsideWords(outside, job), columns, outside.length > 0 ? 'alert' : 'plain')),
		...(invited === null
			? []
			: wrapped(`${invited} ${HOW[tellsMost?.kind === 'check' ? 'check' : 'evidence']}`, columns)),
	];
}

function bends({ bends: made }: DoneNote): Line[] {
	// As wide as the smallest window.
	const head = `${''.padEnd(7)}${'drawn'.padStart(7)}${'wanted'.padStart(8)}${'made'.padStart(9)}${'give or take'.padStart(14)}${'pulls'.padStart(6)}${'set-ups'.padStart(9)}`;
	return [
		line(head, 'quiet'),
		...made.map(
			({ design, target, made: angleMade, sd, pulls, seats }, at): Line => [
				span(`bend ${at + 1}`.padEnd(7)),
				span(angle(design).padStart(7)),
				span(angle(target).padStart(8)),
				span((angleMade === null ? 'not made' : angle(angleMade)).padStart(9), 'strong'),
				span((sd === null ? '' : about(sd)).padStart(14)),
				span(String(pulls).padStart(6)),
				span(String(seats).padStart(9)),
			],
		),
	];
}

function checks({ checks: all }: DoneNote, job: Job): Line[] {
	return all.map(({ name, design, reading }) => {
		const measure = measureOf('check', job, name);
		const read = reading === null ? 'not read' : shown(reading, measure, job);
		return [span(`check ${name}: `), span(read, 'strong'), span(` (drawing ${shown(design, measure, job)})`)];
	});
}

function ends({ trim, endOffset, endAngle, sd, shape }: DoneNote, job: Job, columns: number): Line[] {
	if (trim === null || endOffset === null || endAngle === null || sd === null || shape === null) return [];
	const off = `Far end ${fine(endOffset, job)} and ${angle(endAngle)} off`;
	const give = `give or take ${readingSpread(sd.endOffset, 'length', job)} and ${angle(Math.max(sd.endAngle, 0.1))}`;
	return [
		[
			span('Cut off: '),
			span(cutOff(trim.start, job), 'strong'),
			span(' at the start end, '),
			span(cutOff(trim.end, job), 'strong'),
			span(' at the far end'),
		],
		...wrapped(`${off}, ${give}.`, columns),
		...wrapped(
			`Corner ${shape.bend} is ${fine(shape.off, job)} off, the farthest (${fine(job.tolerance.shape, job)} allowed).`,
			columns,
		),
	];
}

/** Where the cuts go, from what a person can lay a tape to. */
function cuts({ cuts: both }: DoneNote, job: Job, columns: number): Line[] {
	return both.flatMap(({ end, bend, fromTangent, fromCorner }) => {
		const where =
			end === 'start'
				? `Start end: cut ${tape(fromTangent, job)} before bend ${bend} begins`
				: `Far end: cut ${tape(fromTangent, job)} behind the end of bend ${bend}`;
		return wrapped(`${where}, ${tape(fromCorner, job)} from its corner.`, columns, 'plain', 2);
	});
}

function cutOff(length: number, job: Job): string {
	return length < 0 ? `nothing (${tape(-length, job)} short)` : tape(length, job);
}
