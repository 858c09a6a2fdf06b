import type { PullAsk } from '../../../session/protocol/asks.ts';
import type { Placed } from '../../../session/report/set-ups.ts';
import { doubtLoaded } from '../../../springback/gates.ts';
import { cellsOf } from '../../../terminal/width.ts';
import { trimmed } from '../../../units/format.ts';
import { pullReasonTexts } from '../../../words/reason.ts';
import { PULL, RELEASED } from '../../../words/session/ask-pull.ts';
import { type BigNumber, bigNumbers } from '../../text/big-numbers.ts';
import { asciiOnly, cutLine, type Line, line, wrapped } from '../../text/line.ts';
import { inWords } from '../../text/numbers-layout.ts';
import { asksRelease } from '../release.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { bigMark, turnNumber } from './ask-set.ts';
import { answer, BACK, numberField, type PageView, ROOMY_ROWS, type Room, type Section, SLASH, STAR } from './page.ts';
import { ladder } from './pulls.ts';

/** The pull: where to stop, and in a line above it where the mark is and how the tube was turned. */
export function pullPage(state: SessionState, ask: PullAsk): PageView {
	return {
		title: PULL.title(ask.pull),
		prompt: {
			label: PULL.label(ask.stop),
			...numberField('angle', state.job, (loaded) => loadedStep(state, ask, loaded)),
			plus: { label: PULL.plus, step: loadedStep(state, ask, ask.stop) },
			slash: SLASH,
			star: STAR,
			empty: PULL.empty,
		},
		body: (room) => pullSections(state, ask, room),
	};
}

/** A doubtful dial is answered at once: while the tube is still held it can be read again. So is one whose release nobody reads. */
function loadedStep(state: SessionState, { stop }: PullAsk, loaded: number): SessionStep {
	if (doubtLoaded(stop, loaded) || !asksRelease(state)) return answer({ do: 'loaded', loaded });
	return { step: 'draft', draft: { of: 'loaded', value: loaded }, page: { page: 'released', loaded } };
}

/** After the stroke: the dial once the tube has sprung back, for whoever reads it. */
export function releasedPage(state: SessionState, ask: PullAsk, loaded: number): PageView {
	return {
		title: RELEASED.title(ask.pull),
		prompt: {
			label: RELEASED.label,
			...numberField('angle', state.job, (released) => answer({ do: 'loaded', loaded, released })),
			plus: { label: RELEASED.plus, step: answer({ do: 'loaded', loaded }) },
			back: BACK,
			empty: RELEASED.empty,
		},
		body: (room) => [
			{
				rank: 0,
				wide: true,
				lines: bigNumbers([{ ...RELEASED.held, unit: '°', value: trimmed(loaded, 2), place: 1 }], {
					...room,
					window: Math.min(room.window, HELD_ROWS),
				}),
			},
			{ rank: 0, lines: wrapped(RELEASED.what, room.columns) },
			...ladder(state, ask, room),
		],
	};
}

/** The number that was just given is shown for a check, not to be read from afar. */
const HELD_ROWS = 24;

function pullSections(state: SessionState, ask: PullAsk, room: Room): Section[] {
	const stop: BigNumber = { ...PULL.stop, unit: '°', value: trimmed(ask.stop, 2), place: 1 };
	const placed = state.placed === null ? [] : placedLines(state, state.placed, room);
	const cautions = [...pullLimit(ask, room.columns), ...firstPull(state, ask, room)];
	const [why, known] = pullReasonTexts(ask.reason, state.job).map((text) =>
		wrapped(room.ascii ? asciiOnly(text) : text, room.columns),
	);
	return [
		{ rank: 0, wide: true, lines: placed },
		{ rank: 0, wide: true, lines: bigNumbers([...lead(ask), stop], room) },
		// What it shows the reason says in words.
		...ladder(state, ask, room).map((section) => ({ ...section, rank: 2, extra: true })),
		{ rank: 0, lines: cautions },
		{ rank: 0, lines: why ?? [] },
		{ rank: 1, lines: known ?? [] },
	];
}

/** In as many words as have room: the tube lies in the die by now. */
function placedLines(state: SessionState, placed: Placed, { columns }: Room): Line[] {
	const numbers = [bigMark(state, placed), turnNumber(placed)];
	const [whole, brief] = [numbers.map(({ brief: _, ...each }) => inWords(each)), numbers.map(inWords)].map((texts) =>
		texts.join('   '),
	);
	return [cutLine(line(cellsOf(whole!) <= columns ? whole! : brief!), columns)];
}

/** What counts with the first stroke is said again, whatever lists are off. */
function firstPull({ placed }: SessionState, { bend, pull }: PullAsk, { columns, window }: Room): Line[] {
	const first = bend === 1 && pull === 1 && (placed?.seat ?? 1) === 1;
	const text = window < ROOMY_ROWS ? PULL.firstBrief : PULL.first;
	return first ? wrapped(text, columns, 'alert', 2) : [];
}

function lead({ lead: from }: PullAsk): BigNumber[] {
	if (from === null) return [];
	return [{ ...PULL.easeUp, unit: '°', value: trimmed(from, 2), place: 2 }];
}

function pullLimit(ask: PullAsk, columns: number): Line[] {
	return ask.limit ? wrapped(PULL.limit, columns, 'alert') : [];
}
