import { GENERAL_CAUTIONS } from '../../session/cautions.ts';
import type { SetAsk } from '../../session/protocol.ts';
import { trimmed } from '../../units/format.ts';
import { shownUnits, tapeValue } from '../lengths.ts';
import { type Line, line, span, wrapped } from '../line.ts';
import { type BigNumber, bigNumbers } from '../parts/big-numbers.ts';
import type { SessionState } from '../session-state.ts';
import {
	goesWords,
	markEnd,
	markFrom,
	movedWords,
	otherEndWords,
	roundWords,
	seamInBend,
	tapeWords,
} from '../set-words.ts';
import { toldLengths } from '../told-lengths.ts';
import { angle, dial, READINGS, shown, WAYS } from '../words.ts';
import { designStrip } from './lay-out.ts';
import { answer, numberField, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';

/** The tube goes into the die: where the mark is, and which way and how far the tube is turned. */
export function setPage(state: SessionState, ask: SetAsk): PageView {
	const ready = (pointer?: number) =>
		answer({ do: 'ready', ...state.details, ...(pointer === undefined ? {} : { pointer }) });
	return {
		title: ask.seat === 1 ? 'Set the tube' : `Set the tube again, seat ${ask.seat}`,
		prompt: {
			label: 'Tube set? Dial with the tube snug (may be left out)',
			...numberField('angle', state.job, ready),
			plus: { label: 'ready', step: ready() },
			slash: SLASH,
			star: STAR,
			empty: 'Press + when the tube is set, or write what the dial reads now and press Enter.',
		},
		body: (room) => sections(state, ask, room),
	};
}

function sections(state: SessionState, ask: SetAsk, room: Room): Section[] {
	const { job, display } = state;
	const end = markEnd(ask.bend, display.fromStart);
	const said = (text: string, rank: number): Section => ({ rank, lines: wrapped(text, room.columns, 'plain', 2) });
	const again = ask.seat > 1;
	return [
		{
			rank: 0,
			wide: true,
			lines: bigNumbers([{ ...markNumber(state, ask), place: 1 }, turnNumber(ask)], room),
		},
		{ rank: 6, wide: true, lines: strip(state, room) },
		{ rank: 0, lines: [target(ask), ...details(state)] },
		{
			rank: 1,
			lines: ask.cautions
				.filter(isNew)
				.flatMap((text) => wrapped(`! ${toldLengths(text, job)}`, room.columns, 'alert', 2)),
		},
		{
			rank: 2,
			lines: [
				...(ask.bend > 1 && !again ? said(movedWords(ask, job), 0).lines : []),
				...(again ? [] : said(roundWords(ask, job), 0).lines),
			],
		},
		{ ...checkList(state, ask, room), rank: 3 },
		{
			rank: 4,
			lines: [...said(tapeWords(ask, end, job), 0).lines, ...said(otherEndWords(ask, end, job), 0).lines],
		},
		{ rank: 5, lines: again ? [] : [...said(goesWords(ask), 0).lines, ...seam(ask, room.columns)] },
	];
}

/** The general cautions stood on the session's first page, the face stands among the words about the mark. */
function isNew(caution: string): boolean {
	return !GENERAL_CAUTIONS.includes(caution) && !caution.startsWith('The mark goes on the opposite face');
}

export function markNumber({ job, display }: SessionState, ask: SetAsk): BigNumber {
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
	const moved = ask.target === ask.design ? '' : ` (drawing ${angle(ask.design)})`;
	const plan = ask.plan === 'old' ? '   numbers of before the correction' : '';
	return [span('then bend to '), span(angle(ask.target), 'strong'), span(moved), span(plan, 'alert')];
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

/** Rows of a window from which each point of the check list has a line of its own. */
const LIST_ROWS = 36;

/** What to look at before the pull, until somebody knows it by heart. */
function checkList({ display }: SessionState, ask: SetAsk, room: Room): Section {
	if (!display.checklist) return { rank: 0, lines: [] };
	const pointer = `pointer at ${dial(ask.pointer)}`;
	const points = [
		`right face up: ${FACE[ask.face]}`,
		'tube level: gap to a long rule even along its length',
		'slack pulled out',
		pointer,
		'die tight',
	];
	const few = `Look: right face up; level, gap to a long rule even; slack out; ${pointer}; die tight.`;
	if (room.window < LIST_ROWS) return { rank: 0, lines: wrapped(few, room.columns, 'plain', 2) };
	return {
		rank: 0,
		lines: [line('Before the pull'), ...points.flatMap((point) => wrapped(`- ${point}`, room.columns, 'plain', 2))],
	};
}

const FACE: Record<SetAsk['face'], string> = {
	same: 'the line',
	opposite: 'opposite the line',
	other: 'the mark round the tube',
};

function seam({ around }: SetAsk, columns: number): Line[] {
	if (!seamInBend(around.degrees)) return [];
	const text = "A welded seam put to bend 1's side comes to the inside or outside of this bend: watch it there.";
	return wrapped(text, columns, 'alert', 2);
}
