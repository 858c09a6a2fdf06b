import type { SetAsk } from '../../../session/protocol/asks.ts';
import { trimmed } from '../../../units/format.ts';
import { foreignName } from '../../../words/foreign.ts';
import { shownUnits, tapeValue } from '../../../words/lengths.ts';
import { angle, shown } from '../../../words/numbers.ts';
import { READINGS, WAYS } from '../../../words/readings.ts';
import { type BigNumber, bigNumbers } from '../../text/big-numbers.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { goesWords, markEnd, markFrom, markLineWords, movedWords, otherEndWords, tapeWords } from '../set-words.ts';
import { designStrip } from './lay-out.ts';
import { answer, numberField, type PageView, ROOMY_ROWS, type Room, type Section, SLASH, STAR } from './page.ts';
import { cautions, checkList, lengthToCutWords, seam } from './set-up.ts';

/** The tube goes into the die: where the mark is, and which way and how far the tube is turned. */
export function setPage(state: SessionState, ask: SetAsk): PageView {
	const ready = (pointer?: number) =>
		answer({ do: 'ready', ...state.details, ...(pointer === undefined ? {} : { pointer }) });
	return {
		title: ask.seat === 1 ? 'Set the tube' : `Set the tube again, set-up ${ask.seat}`,
		prompt: {
			label:
				ask.seat === 1
					? 'Tube set? What does the dial show, snug? + leaves it out'
					: 'What does the dial show with the tube snug?',
			...numberField('angle', state.job, ready),
			plus: { label: ask.seat === 1 ? 'ready' : 'not read', step: ready() },
			slash: SLASH,
			star: STAR,
			empty:
				ask.seat === 1
					? 'Press + when the tube is set, or write what the dial reads now and press Enter.'
					: 'Write what the dial shows now and press Enter, or press + if you did not look.',
		},
		body: (room) => sections(state, ask, room),
	};
}

function sections(state: SessionState, ask: SetAsk, room: Room): Section[] {
	const { job, display } = state;
	const end = markEnd(ask.bend, display.fromStart);
	const said = (rank: number, ...texts: string[]): Section => ({
		rank,
		lines: texts.flatMap((text) => wrapped(text, room.columns, 'plain', 2)),
	});
	const [first, again] = [ask.bend === 1, ask.seat > 1];
	return [
		{ rank: 0, wide: true, lines: bigNumbers([{ ...bigMark(state, ask), place: 1 }, turnNumber(ask)], room) },
		{ rank: 7, wide: true, extra: true, lines: strip(state, room) },
		{ rank: 0, lines: [target(ask), ...details(state)] },
		{ rank: 2, lines: [...cautions(state, ask, room.columns), ...(again ? [] : seam(ask, room.columns))] },
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

export function bigMark({ job, display }: SessionState, ask: SetAsk): BigNumber {
	const end = markEnd(ask.bend, display.fromStart);
	const value = tapeValue(markFrom(ask, end), job);
	return {
		label: 'MARK',
		unit: shownUnits(job),
		value,
		below: `from the ${end} end`,
		brief: `from ${end.toUpperCase()}`,
		place: 3,
	};
}

export function turnNumber(ask: SetAsk): BigNumber {
	const { degrees, way } = ask.tubeTurn;
	const below = ask.seat > 1 && way === 'none' ? 'leave as it is' : WAYS[way];
	const arrow = way === 'clockwise' || way === 'counterclockwise' ? { way } : {};
	return { label: 'TURN', unit: '°', value: trimmed(degrees, 1), below, place: 3, ...arrow };
}

function target(ask: SetAsk): Line {
	const moved = angle(ask.target) === angle(ask.design) ? '' : ` (drawing ${angle(ask.design)})`;
	const plan = ask.plan === 'old' ? '   old numbers, from before the correction' : '';
	const on = ask.die === undefined ? '' : ` on die "${foreignName(ask.die)}"`;
	return [span('then bend to '), span(angle(ask.target), 'strong'), span(moved), span(on), span(plan, 'alert')];
}

function details({ details: given, job }: SessionState): Line[] {
	return Object.entries(given).map(([of, value]) => {
		const measure = of === 'rotation' ? 'angle' : 'length';
		return line(`+ also tells: ${READINGS[of as keyof typeof given]} ${shown(value, measure, job)}`, 'good');
	});
}

/** Rows of a window from which the straight tube has room beside all else. */
const STRIP_ROWS = 44;

function strip(state: SessionState, { columns, window }: Room): Line[] {
	return window < STRIP_ROWS ? [] : designStrip(state, columns);
}
