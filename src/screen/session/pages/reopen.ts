import type { Answer } from '../../../session/protocol/action.ts';
import { trimmed } from '../../../units/format.ts';
import { GO_EASY } from '../../../words/caution.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { bigNumbers } from '../../text/big-numbers.ts';
import { wrapped } from '../../text/line.ts';
import type { OpenBy, SessionState, Step } from '../session-state.ts';
import { answer, BACK, type PageView, type Room, type Section } from './page.ts';

/** Opening a bend goes through its caution first, once a bend. */
export function reliefStep(state: SessionState, bend: number, relief: Answer, open?: OpenBy): Step {
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
					{ label: 'OPEN BY', value: trimmed(by, 1), unit: '°', below: '', place: 1 },
					{ label: 'READ THEN', value: trimmed(to, 1), unit: '°', below: '', place: 3 },
				],
				room,
			),
		},
	];
}

/** What to know before a bend is opened. */
export function reliefPage(bend: number, relief: Answer, open?: OpenBy): PageView {
	return {
		title: `Caution: opening bend ${bend}`,
		prompt: {
			label: '',
			plus: { label: 'open it', step: { step: 'answer', answer: relief } },
			back: BACK,
			empty: 'Press + to open the bend, / to go back.',
		},
		body: (room) => [
			...(open ? openingNumbers(open, room, 0) : []),
			{ rank: 0, lines: wrapped(`! ${GO_EASY}`, room.columns, 'alert', 2) },
			{
				rank: 1,
				lines: wrapped(
					'It moves suddenly: keep hands and face out of its way, and measure after each time.',
					room.columns,
				),
			},
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
		title: 'Go back to a made bend',
		prompt: {
			label: "The bend's number",
			choices: madeBends(state).map((bend) => ({
				label: `bend ${bend}`,
				step: { step: 'page', page: { page: 'reopenHow', bend } },
			})),
			back: BACK,
			empty: "Write the bend's number and press Enter; / goes back.",
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(
					`A bend that was taken can be pulled further${state.job.mayOpen ? ' or opened a little' : ''}. Its checks follow, then the session goes on where it was.`,
					room.columns,
				),
			},
		],
	};
}

/** What to do with it. */
export function reopenHowPage(state: SessionState, bend: number): PageView {
	return {
		title: `Go back to bend ${bend}`,
		prompt: {
			label: CHOICE,
			choices: [
				{ label: 'pull it further', step: answer({ do: 'reopen', bend, how: 'pull' }) },
				...(state.job.mayOpen
					? [
							{
								label: 'open it a little',
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
