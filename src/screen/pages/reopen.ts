import { RELIEF_CAUTION } from '../../session/cautions.ts';
import type { Answer } from '../../session/protocol.ts';
import { wrapped } from '../line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { answer, BACK, bendNumber, type PageView } from './page.ts';

/** Opening a bend goes through its caution first, once a bend. */
export function reliefStep(state: SessionState, bend: number, relief: Answer): Step {
	if (state.cautioned.includes(bend)) return { step: 'answer', answer: relief };
	return { step: 'page', page: { page: 'relief', bend, answer: relief } };
}

/** What to know before a bend is opened. */
export function reliefPage(bend: number, relief: Answer): PageView {
	return {
		title: `Caution: opening bend ${bend}`,
		prompt: {
			label: '',
			plus: { label: 'open it', step: { step: 'answer', answer: relief } },
			back: BACK,
			empty: 'Press + to open the bend, Esc to go back.',
		},
		body: (room) => [
			{ rank: 0, lines: wrapped(`! ${RELIEF_CAUTION}`, room.columns, 'alert', 2) },
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

/** Which made bend to go back to. */
export function reopenPage(bends: number): PageView {
	return {
		title: 'Go back to a made bend',
		prompt: {
			label: `Bend, 1 to ${bends}`,
			read: (text) => ({ step: 'page', page: { page: 'reopenHow', bend: bendNumber(text, bends) } }),
			back: BACK,
			empty: "Write the bend's number and press Enter; Esc goes back.",
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(
					'A bend that was accepted can be pulled further or opened a little. Its checks follow, then the session goes on where it was.',
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
			label: 'Number of your choice',
			choices: [
				{ label: 'pull it further', step: answer({ do: 'reopen', bend, how: 'pull' }) },
				{
					label: 'open it a little',
					step: reliefStep(state, bend, { action: { do: 'reopen', bend, how: 'relieve' } }),
				},
			],
			back: BACK,
			empty: 'Write 1 or 2 and press Enter; Esc goes back.',
		},
		body: () => [],
	};
}
