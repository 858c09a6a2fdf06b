import type { AmendPreview } from '../../../session/advice/amend-preview.ts';
import type { Answered } from '../../../session/log/answered.ts';
import type { Reading } from '../../../session/log/events.ts';
import { cellsOf, padded } from '../../../terminal/width.ts';
import { bendName } from '../../../words/bend-name.ts';
import { readingName } from '../../../words/readings.ts';
import { KEY_NAMES } from '../../../words/screen/frame.ts';
import { KEY_SAYS, ONLY_BACK } from '../../../words/screen/usual.ts';
import { AMEND_SURE, changeRows, valueTold, WALK } from '../../../words/session/amend.ts';
import type { Key } from '../../shell/keys.ts';
import { NOTHING } from '../../shell/prompt.ts';
import type { KeyHint } from '../../text/key-line.ts';
import { cutLine, EMPTY, type Line, line, span, wrapped } from '../../text/line.ts';
import { firstShown } from '../../text/window.ts';
import type { Amending, Page, SessionState } from '../session-state.ts';
import { amendable, amendField } from './amend.ts';
import { answer, BACK, type PageView, type Room, type Section } from './page.ts';

/** A reading of the session with the entry that holds it; `mark`: what became of it, where it was doubted. */
interface Taken {
	entry: Answered;
	reading: Reading;
	mark: string;
}

/** Every reading that counts, the newest first; of one entry in the order in which they were read, backwards. */
function takenReadings(state: SessionState): Taken[] {
	return amendable(state).flatMap((entry) =>
		(entry.readings ?? [])
			.map((reading) => ({ entry, reading, mark: readingMark(state.history, entry, reading) }))
			.toReversed(),
	);
}

/** What became of a reading that was doubted; '' for one that never was. */
function readingMark(history: readonly Answered[], entry: Answered, { of, value }: Reading): string {
	if (entry.aside) return WALK.marks.aside;
	const doubted = entry.events.some((event) => event.type === 'reading-doubted' && event.reading.of === of);
	if (!doubted) return '';
	const later = history.filter((each) => !each.void && each.entry > entry.entry).flatMap(({ events }) => events);
	const settled = later.find((event) => event.type === 'doubt-settled' && event.reading.of === of);
	if (settled?.type !== 'doubt-settled') return WALK.marks.doubted;
	return settled.setAside.includes(value) ? WALK.marks.aside : WALK.marks.again;
}

/** Pages on which something is asked that readings bear on. */
const ASKING_PAGES: readonly Page['page'][] = ['ask', 'released', 'least', 'corrected'];

/** Whether the arrow keys lead to earlier readings from where one is. */
function canWalk(state: SessionState): boolean {
	const { page, ask, entry, history } = state;
	const question = ASKING_PAGES.includes(page.page);
	// Where there are choices the arrows point at them first: from the first one up are the readings.
	const free = question && ask !== null && entry.field === '' && (entry.selected ?? 0) === 0;
	return free && history.some((each) => !each.void && (each.readings?.length ?? 0) > 0);
}

/** The arrow keys where they lead somewhere. */
export function walkKeys(state: SessionState): KeyHint[] {
	if (state.page.page === 'walk') {
		return [
			[KEY_NAMES.up, WALK.keys.up],
			[KEY_NAMES.down, WALK.keys.down],
		];
	}
	return canWalk({ ...state, entry: NOTHING }) ? [[KEY_NAMES.up, WALK.keys.open, WALK.keys.openBrief]] : [];
}

/** The page that an arrow key leads to while walking back through the readings; null: it leads nowhere. */
export function walked(state: SessionState, { key }: Key): Page | null {
	const { page } = state;
	if (key !== 'up' && key !== 'down') return null;
	if (page.page !== 'walk') return key === 'up' && canWalk(state) ? { page: 'walk', at: 0, from: page } : null;
	const last = takenReadings(state).length - 1;
	const at = page.at + (key === 'up' ? 1 : -1);
	return at < 0 ? page.from : { ...page, at: Math.min(last, at) };
}

/** The readings of this session, one of them in hand to be corrected. */
export function walkPage(state: SessionState, { at, from }: Extract<Page, { page: 'walk' }>): PageView {
	const back = { label: KEY_SAYS.back, step: { step: 'page', page: from } } as const;
	const all = takenReadings(state);
	const taken = all[Math.min(at, all.length - 1)];
	if (taken === undefined) {
		return {
			title: WALK.title,
			prompt: { label: '', back, empty: ONLY_BACK },
			body: () => [{ rank: 0, lines: [line(WALK.none)] }],
		};
	}
	const { entry, reading } = taken;
	return {
		title: WALK.title,
		prompt: {
			label: WALK.label(entry.entry, reading),
			...amendField(state, entry, reading),
			back,
			empty: WALK.empty,
		},
		body: (room) => [{ rank: 0, lines: walkLines(state, all, at, room) }],
	};
}

/** Cells of the mark, the entry and the bend in front of a reading's name, and the most of the name. */
const BEFORE_NAME = 16;
const NAME_WIDTH = 36;

/** As many as have room, the newest lowest as on the page they came from, the one in hand marked. */
function walkLines(state: SessionState, all: readonly Taken[], at: number, { columns, rows }: Room): Line[] {
	const room = Math.max(3, rows - 1);
	const told = ({ reading, mark }: Taken) => [valueTold(reading, state.job), mark].filter(Boolean).join('  ');
	const names = Math.min(NAME_WIDTH, columns - BEFORE_NAME - 1 - Math.max(...all.map((each) => cellsOf(told(each)))));
	const first = firstShown(at, room, all.length);
	return all
		.slice(first, first + room)
		.map((taken, index): Line => {
			const { entry, reading } = taken;
			const where = reading.bend === undefined ? '' : bendName(reading.bend);
			const [name] = cutLine([span(padded(readingName(reading), names))], names);
			const text = `${String(entry.entry).padStart(4)}  ${where.padEnd(8)}${name?.text ?? ''} ${told(taken)}`;
			const inHand = first + index === at;
			return [span(inHand ? '> ' : '  ', 'strong'), span(text, inHand ? 'inverse' : 'plain')];
		})
		.toReversed();
}

/** What a correction changes, before it counts. */
export function amendSurePage(state: SessionState, { entry, reading, value, would }: Amending): PageView {
	const action = { do: 'amend', entry: entry.entry, reading: value, ...(reading && { of: reading.of }) } as const;
	return {
		title: AMEND_SURE.title,
		prompt: {
			label: '',
			plus: { label: AMEND_SURE.plus, step: answer(action) },
			back: BACK,
			empty: AMEND_SURE.empty,
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(AMEND_SURE.what(entry.entry, reading, value, state.job), columns, 'strong', 2) },
			...(would === null ? [] : amendChanges(state, would, columns)),
		],
	};
}

/** Columns of what a row is of, and of its two numbers. */
const OF_WIDTH = 19;
const NUMBER_WIDTH = 10;

/** What else becomes different by it, nothing of it kept yet. */
function amendChanges({ job }: SessionState, would: AmendPreview, columns: number): Section[] {
	const { doubted, next } = would;
	const rows = changeRows(would, job).map(([of, before, after]) =>
		line(`  ${of.padEnd(OF_WIDTH)}${before.padStart(NUMBER_WIDTH)}  ->  ${after}`),
	);
	const nothing = rows.length === 0 && doubted === null && next === null;
	const told = rows.length === 0 ? [] : [line(AMEND_SURE.changes, 'quiet'), ...rows];
	return [
		{ rank: 0, lines: nothing ? [line(AMEND_SURE.nothing)] : told },
		{ rank: 0, lines: doubted === null ? [] : wrapped(AMEND_SURE.doubted(doubted, job), columns, 'alert', 2) },
		{ rank: 1, lines: next === null || doubted !== null ? [] : [EMPTY, line(AMEND_SURE.next)] },
	];
}
