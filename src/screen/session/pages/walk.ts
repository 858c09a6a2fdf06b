import type { AmendPreview } from '../../../session/advice/preview.ts';
import type { Answered } from '../../../session/log/answered.ts';
import type { Reading } from '../../../session/log/events.ts';
import { padded } from '../../../terminal/width.ts';
import { angle, dial, measureOf, shown, tape } from '../../../words/numbers.ts';
import { readingName } from '../../../words/readings.ts';
import { reasonWords } from '../../../words/reason.ts';
import { ONLY_BACK } from '../../../words/screen/usual.ts';
import type { Key } from '../../shell/keys.ts';
import { NOTHING } from '../../shell/prompt.ts';
import type { KeyHint } from '../../text/key-line.ts';
import { cut, EMPTY, type Line, line, span, wrapped } from '../../text/line.ts';
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
function readingsOf(state: SessionState): Taken[] {
	return amendable(state).flatMap((entry) =>
		(entry.readings ?? [])
			.map((reading) => ({ entry, reading, mark: markOf(state.history, entry, reading) }))
			.toReversed(),
	);
}

/** What became of a reading that was doubted; '' for one that never was. */
function markOf(history: readonly Answered[], entry: Answered, { of, value }: Reading): string {
	if (entry.aside) return 'set aside';
	const doubted = entry.events.some((event) => event.type === 'reading-doubted' && event.reading.of === of);
	if (!doubted) return '';
	const later = history.filter((each) => !each.void && each.entry > entry.entry).flatMap(({ events }) => events);
	const settled = later.find((event) => event.type === 'doubt-settled' && event.reading.of === of);
	if (settled?.type !== 'doubt-settled') return 'doubted';
	return settled.setAside.includes(value) ? 'set aside' : 'read again';
}

/** Whether the arrow keys lead to earlier readings from where one is. */
function canWalk(state: SessionState): boolean {
	const { page, ask, entry, history } = state;
	const question = page.page === 'ask' || page.page === 'released' || page.page === 'least';
	// Where there are choices the arrows point at them first: from the first one up are the readings.
	const free = question && ask !== null && entry.field === '' && (entry.selected ?? 0) === 0;
	return free && history.some((each) => !each.void && (each.readings?.length ?? 0) > 0);
}

/** The arrow keys where they lead somewhere. */
export function walkKeys(state: SessionState): KeyHint[] {
	if (state.page.page === 'walk') {
		return [
			['Up', 'earlier'],
			['Down', 'later'],
		];
	}
	return canWalk({ ...state, entry: NOTHING }) ? [['Up', 'readings', 'back']] : [];
}

/** The page that an arrow key leads to while walking back through the readings; null: it leads nowhere. */
export function walked(state: SessionState, { key }: Key): Page | null {
	const { page } = state;
	if (key !== 'up' && key !== 'down') return null;
	if (page.page !== 'walk') return key === 'up' && canWalk(state) ? { page: 'walk', at: 0, from: page } : null;
	const last = readingsOf(state).length - 1;
	const at = page.at + (key === 'up' ? 1 : -1);
	return at < 0 ? page.from : { ...page, at: Math.min(last, at) };
}

/** The readings of this session, one of them in hand to be corrected. */
export function walkPage(state: SessionState, { at, from }: Extract<Page, { page: 'walk' }>): PageView {
	const back = { label: 'back', step: { step: 'page', page: from } } as const;
	const all = readingsOf(state);
	const taken = all[Math.min(at, all.length - 1)];
	if (taken === undefined) {
		return {
			title: 'Earlier readings',
			prompt: { label: '', back, empty: ONLY_BACK },
			body: () => [{ rank: 0, lines: [line('There is none.')] }],
		};
	}
	const { entry, reading } = taken;
	return {
		title: 'Earlier readings',
		prompt: {
			label: `Line ${entry.entry}, ${readingName(reading)}: what it really was`,
			...amendField(state, entry, reading),
			back,
			empty: 'Arrow up: an earlier one; arrow down: a later one. Write the right number and press Enter to correct it.',
		},
		body: (room) => [{ rank: 0, lines: listed(state, all, at, room) }],
	};
}

/** Cells of the mark, the entry and the bend in front of a reading's name, and what its value wants behind it. */
const BEFORE_NAME = 16;
const VALUE_WIDTH = 13;
const NAME_WIDTH = 36;
const MARK_WIDTH = 12;

/** As many as have room, the newest lowest as on the page they came from, the one in hand marked. */
function listed(state: SessionState, all: readonly Taken[], at: number, { columns, rows }: Room): Line[] {
	const room = Math.max(3, rows - 1);
	const names = Math.min(NAME_WIDTH, columns - BEFORE_NAME - VALUE_WIDTH - MARK_WIDTH);
	const first = Math.max(0, Math.min(at - Math.floor(room / 2), all.length - room));
	return all
		.slice(first, first + room)
		.map(({ entry, reading, mark }, index): Line => {
			const where = reading.bend === undefined ? '' : `bend ${reading.bend}`;
			const value = shown(reading.value, measureOf(reading.of, state.job, reading.name), state.job);
			const [name] = cut([span(padded(readingName(reading), names))], names);
			const told = mark === '' ? value : `${value}  ${mark}`;
			const text = `${String(entry.entry).padStart(4)}  ${where.padEnd(8)}${name?.text ?? ''} ${told}`;
			const inHand = first + index === at;
			return [span(inHand ? '> ' : '  ', 'strong'), span(text, inHand ? 'inverse' : 'plain')];
		})
		.toReversed();
}

/** What a correction changes, before it counts. */
export function amendSurePage(state: SessionState, { entry, reading, value, would }: Amending): PageView {
	const action = { do: 'amend', entry: entry.entry, reading: value, ...(reading && { of: reading.of }) } as const;
	return {
		title: 'Correct it?',
		prompt: {
			label: '',
			plus: { label: 'correct it', step: answer(action) },
			back: BACK,
			empty: 'Press + to correct the reading, / to leave it as it was.',
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(`Line ${entry.entry}: ${corrected(state, reading, value)}`, columns, 'strong', 2) },
			...(would === null ? [] : changes(state, would, columns)),
		],
	};
}

function corrected(state: SessionState, reading: Reading | null, value: number): string {
	if (reading === null) return String(value);
	const measure = measureOf(reading.of, state.job, reading.name);
	return `${readingName(reading)}, not ${shown(reading.value, measure, state.job)} but ${shown(value, measure, state.job)}`;
}

/** What else becomes different by it, nothing of it kept yet. */
function changes(state: SessionState, { doubted, made, plan, stop, next }: AmendPreview, columns: number): Section[] {
	const { job } = state;
	const rows = [
		...made.map((each) => `bend ${each.bend} made        ${to(angle(each.angle.before), angle(each.angle.after))}`),
		...plan.flatMap(({ bend, mark, rotation, angle: target }) => [
			`bend ${bend} mark        ${to(tape(mark.before, job), tape(mark.after, job))}`,
			...(angle(rotation.before) === angle(rotation.after)
				? []
				: [`bend ${bend} rotation    ${to(angle(rotation.before), angle(rotation.after))}`]),
			`bend ${bend} bend        ${to(angle(target.before), angle(target.after))}`,
		]),
		...(stop === null ? [] : [`stop of this pull  ${to(dial(stop.before), dial(stop.after))}`]),
	];
	const nothing = rows.length === 0 && doubted === null && next === null;
	return [
		{
			rank: 0,
			lines: nothing
				? [line('No angle, mark or stop changes by it.')]
				: rows.length === 0
					? []
					: [line('It would change:', 'quiet'), ...rows.map((text) => line(`  ${text}`))],
		},
		{
			rank: 0,
			lines:
				doubted === null ? [] : wrapped(`It will be asked again: ${reasonWords(doubted, job)}`, columns, 'alert', 2),
		},
		{ rank: 1, lines: next === null || doubted !== null ? [] : [EMPTY, line('Another question will be open then.')] },
	];
}

function to(before: string, after: string): string {
	return `${before.padStart(10)}  ->  ${after}`;
}
