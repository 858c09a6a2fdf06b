import type { SetAsk } from '../../../session/protocol/asks.ts';
import type { Placed } from '../../../session/report/set-ups.ts';
import type { EndName } from '../../../tube/job.ts';
import { markFrom } from '../../../tube/marks.ts';
import { trimmed } from '../../../units/format.ts';
import { shownUnits, tapeValue } from '../../../words/lengths.ts';
import { alsoTold, goalWords, markedFrom, SET, turnBelow } from '../../../words/session/ask-set.ts';
import { goesWords, markLineWords, movedWords, otherEndWords, tapeWords } from '../../../words/session/mark.ts';
import { type BigNumber, bigNumbers } from '../../text/big-numbers.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { designStrip } from './lay-out.ts';
import { answer, numberField, type PageView, ROOMY_ROWS, type Room, type Section, SLASH, STAR } from './page.ts';
import { checkList, lengthToCutWords, seamHere, setCautions } from './set-up.ts';

/** The tube goes into the die: where the mark is, and which way and how far the tube is turned. */
export function setPage(state: SessionState, ask: SetAsk): PageView {
	const ready = (pointer?: number) =>
		answer({ do: 'ready', ...state.details, ...(pointer === undefined ? {} : { pointer }) });
	const again = ask.seat > 1;
	return {
		title: SET.title(ask.seat),
		prompt: {
			label: SET.label(again),
			...numberField('angle', state.job, ready),
			plus: { label: SET.plus(again), step: ready() },
			slash: SLASH,
			star: STAR,
			empty: SET.empty(again),
		},
		body: (room) => setSections(state, ask, room),
	};
}

function setSections(state: SessionState, ask: SetAsk, room: Room): Section[] {
	const { job, display } = state;
	const end = markEnd(ask.bend, display.fromStart);
	const said = (rank: number, ...texts: string[]): Section => ({
		rank,
		lines: texts.flatMap((text) => wrapped(text, room.columns, 'plain', 2)),
	});
	const [first, again] = [ask.bend === 1, ask.seat > 1];
	return [
		{ rank: 0, wide: true, lines: bigNumbers([{ ...bigMark(state, ask), place: 1 }, turnNumber(ask)], room) },
		{ rank: 7, wide: true, extra: true, lines: stripLines(state, ask, room) },
		{ rank: 0, lines: [goal(ask), ...details(state)] },
		{ rank: 2, lines: [...setCautions(state, ask, room.columns), ...(again ? [] : seamHere(ask, room.columns))] },
		// At the first bend the mark is on the line, which was drawn a page before.
		said(first ? 5 : 1, ...(first || again ? [] : [movedWords(ask, job)]), ...(again ? [] : [markLineWords(ask, job)])),
		{ ...checkList(state, ask, room), rank: 3 },
		said(4, tapeWords(ask, end, job, room.window < ROOMY_ROWS)),
		said(5, otherEndWords(ask, end, job)),
		// Lay out has the length, the menu its change, the turn which way the bend goes.
		{ ...said(6, ...lengthToCutWords(state, ask)), extra: true },
		{ ...said(5, ...(again ? [] : [goesWords(ask)])), extra: true },
	];
}

/** From which end the large mark is measured: once a bend is made nobody can tape along the tube from the start end. */
export function markEnd(bend: number, fromStart: boolean): EndName {
	return bend > 1 && !fromStart ? 'far' : 'start';
}

export function bigMark({ job, display }: SessionState, ask: Placed): BigNumber {
	const end = markEnd(ask.bend, display.fromStart);
	const value = tapeValue(markFrom(ask.mark, end), job);
	return { label: SET.mark, unit: shownUnits(job), value, ...markedFrom(end), place: 3 };
}

export function turnNumber(ask: Placed): BigNumber {
	const { degrees, way } = ask.tubeTurn;
	const arrow = way === 'clockwise' || way === 'counterclockwise' ? { way } : {};
	return { label: SET.turn, unit: '°', value: trimmed(degrees, 1), below: turnBelow(ask), place: 3, ...arrow };
}

function goal(ask: SetAsk): Line {
	const { lead, angle, more, old } = goalWords(ask);
	return [span(lead), span(angle, 'strong'), span(more), span(old, 'alert')];
}

function details({ details: given, job }: SessionState): Line[] {
	return Object.entries(given).map(([of, value]) => line(alsoTold(of as keyof typeof given, value, job), 'good'));
}

/** Rows of a window from which the straight tube has room beside all else. */
const STRIP_ROWS = 44;

/** At the first bend alone: later marks are other ones than the drawing's, and are taped from the far end. */
function stripLines(state: SessionState, { bend, mark }: SetAsk, { columns, window }: Room): Line[] {
	return window < STRIP_ROWS || bend > 1 || mark.moved !== 0 ? [] : designStrip(state, columns);
}
