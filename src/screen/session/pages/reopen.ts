import type { Answer } from '../../../session/protocol/action.ts';
import { trimmed } from '../../../units/format.ts';
import { bendName } from '../../../words/bend-name.ts';
import { GO_EASY } from '../../../words/caution.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { WHICH_BEND } from '../../../words/session/again.ts';
import { DECIDE, OPENING, RELIEF, REOPEN } from '../../../words/session/ask-decide.ts';
import { bigNumbers } from '../../text/big-numbers.ts';
import { wrapped } from '../../text/line.ts';
import type { OpenBy, SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, type PageView, type Room, type Section } from './page.ts';

/** Opening a bend goes through its caution first, once a bend. */
export function reliefStep(state: SessionState, bend: number, relief: Answer, open?: OpenBy): SessionStep {
	if (state.cautioned.includes(bend)) return { step: 'answer', answer: relief };
	return { step: 'page', page: { page: 'relief', bend, answer: relief, ...(open ? { open } : {}) } };
}

/** How far to open, and the angle to read then: large. */
export function openingNumbers({ by, to }: OpenBy, room: Room, rank: number): Section[] {
	return [
		{
			rank,
			wide: true,
			lines: bigNumbers(
				[
					{ label: OPENING.by, value: trimmed(by, 1), unit: '°', below: '', place: 1 },
					{ label: OPENING.to, value: trimmed(to, 1), unit: '°', below: '', place: 1 },
				],
				room,
			),
		},
	];
}

/** What to know before a bend is opened. */
export function reliefPage(bend: number, relief: Answer, open?: OpenBy): PageView {
	return {
		title: RELIEF.title(bend),
		prompt: {
			label: '',
			plus: { label: RELIEF.plus, step: { step: 'answer', answer: relief } },
			back: BACK,
			empty: RELIEF.empty,
		},
		body: (room) => [
			...(open ? openingNumbers(open, room, 0) : []),
			{ rank: 0, lines: wrapped(`! ${GO_EASY}`, room.columns, 'alert', 2) },
			{ rank: 1, lines: wrapped(RELIEF.sudden, room.columns) },
		],
	};
}

/** The bends that have been accepted: those before the one at work. */
export function madeBends(state: SessionState): number[] {
	return Array.from({ length: Math.max(0, bendAtWork(state) - 1) }, (_, at) => at + 1);
}

/** A check has no bend of its own: it belongs to the last one that was seated or read. */
function bendAtWork({ ask, set, history }: SessionState): number {
	if (ask !== null && 'bend' in ask && ask.bend !== undefined) return ask.bend;
	if (set !== null) return set.bend;
	const read = history.filter((entry) => !entry.void).flatMap(({ readings = [] }) => readings);
	return Math.max(0, ...read.map(({ bend = 0 }) => bend));
}

/** Which made bend to go back to. */
export function reopenPage(state: SessionState): PageView {
	return {
		title: REOPEN.title,
		prompt: {
			label: WHICH_BEND.label,
			choices: madeBends(state).map((bend) => ({
				label: bendName(bend),
				step: { step: 'page', page: { page: 'reopenHow', bend } },
			})),
			back: BACK,
			empty: WHICH_BEND.empty,
		},
		body: (room) => [{ rank: 0, lines: wrapped(REOPEN.what(state.job.mayOpen), room.columns) }],
	};
}

/** What to do with it. */
export function reopenHowPage(state: SessionState, bend: number): PageView {
	return {
		title: REOPEN.to(bend),
		prompt: {
			label: CHOICE,
			choices: [
				{ label: DECIDE.pull, step: answer({ do: 'reopen', bend, how: 'pull' }) },
				...(state.job.mayOpen
					? [
							{
								label: DECIDE.open(),
								step: reliefStep(state, bend, { action: { do: 'reopen', bend, how: 'relieve' } }),
							},
						]
					: []),
			],
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}
