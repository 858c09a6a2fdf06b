import type { Advice, DecideAsk, ToMeasure } from '../../../session/protocol/asks.ts';
import { trimmed } from '../../../units/format.ts';
import { about, angle, angleGiveOrTake } from '../../../words/numbers.ts';
import { reasonWords } from '../../../words/reason.ts';
import type { Choice } from '../../shell/prompt.ts';
import { bigNumbers } from '../../text/big-numbers.ts';
import { line, span, wrapped } from '../../text/line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { answer, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';
import { ladder } from './pulls.ts';
import { reliefStep } from './reopen.ts';

/** What becomes of the bend: taken as it is, pulled more, opened a little, or the tube scrapped. */
export function decidePage(state: SessionState, ask: DecideAsk): PageView {
	const choices = choicesOf(state, ask);
	const advised = choices.filter((choice) => choice.advised);
	const [only] = advised;
	return {
		title: 'Decide',
		prompt: {
			label: 'Number of your choice',
			choices,
			// Where the advice can be followed in two ways the program does not choose between them.
			...(advised.length === 1 && only !== undefined ? { plus: { label: 'as advised', step: only.step } } : {}),
			slash: SLASH,
			star: STAR,
			empty: 'Write the number of a choice and press Enter.',
		},
		body: (room) => sections(state, ask, room),
	};
}

function choicesOf(state: SessionState, ask: DecideAsk): Choice<Step>[] {
	const by = (advice: Advice) => ({ advised: ask.advice === advice });
	const open = ask.open === undefined ? 'a little' : `by ${angle(ask.open)}`;
	const { mayOpen } = state.job;
	const choices: Choice<Step>[] = [
		{ label: 'take it as it is', step: answer({ do: 'accept' }), ...by('accept') },
		{ label: 'pull it further', step: answer({ do: 'pull' }), ...by('pull') },
		...(mayOpen
			? [
					{
						label: `open it ${open}`,
						step: reliefStep(state, ask.bend, { action: { do: 'relieve' } }),
						...by('relieve'),
					},
				]
			: []),
		{
			label: 'scrap the tube',
			step: { step: 'page', page: { page: 'text', purpose: 'scrap', value: '' } },
			...by('scrap'),
		},
	];
	const { of: bend, how: advised } = ask;
	if (bend === undefined) return choices;
	if (typeof bend === 'object') return [...measureAgain(bend, ask), ...choices];
	const go = (how: 'pull' | 'relieve') =>
		advised === undefined || advised === how ? by('reopen') : { advised: false };
	const reopen = (how: 'pull' | 'relieve') => ({ action: { do: 'reopen' as const, bend, how } });
	return [
		...choices,
		{
			label: `go back to bend ${bend} and pull it further`,
			step: { step: 'answer', answer: reopen('pull') },
			...go('pull'),
		},
		...(mayOpen
			? [
					{
						label: `go back to bend ${bend} and open it a little`,
						step: reliefStep(state, bend, reopen('relieve')),
						...go('relieve'),
					},
				]
			: []),
	];
}

/** First of all, since what is advised then rests on it. */
function measureAgain({ kind, bend }: ToMeasure, ask: DecideAsk): Choice<Step>[] {
	if (kind === 'check') return [];
	const at = bend ?? ask.bend;
	const step: Step = { step: 'page', page: { page: 'evidenceValue', kind, bend: at } };
	return [{ label: `measure bend ${at} again`, step, advised: true }];
}

function sections(state: SessionState, ask: DecideAsk, room: Room): Section[] {
	const made = {
		label: `BEND ${ask.bend} MADE`,
		value: trimmed(ask.made.angle, 1),
		unit: '°',
		below: `give or take ${about(ask.made.sd)}`,
		place: 1,
	} as const;
	const wanted = {
		label: 'WANTED',
		unit: '°',
		value: trimmed(ask.target, 1),
		place: 3,
		below: angle(ask.target) === angle(ask.design) ? 'as drawn' : `drawn ${angle(ask.design)}`,
	} as const;
	// How it came out stands in the line above.
	const told = ask.reason.filter(({ code }) => code !== 'bend-made');
	return [
		// The line below says the same.
		{ rank: 2, wide: true, extra: true, lines: bigNumbers([made, wanted], room) },
		{ rank: 0, lines: [line(`made ${angleGiveOrTake(ask.made)}, ${difference(ask)}`)] },
		{ rank: 0, lines: [...wrapped(reasonWords(told, state.job), room.columns, 'strong'), ...limit(ask)] },
		...ladder(state, ask, room).map((section) => ({ ...section, rank: 1 })),
	];
}

function limit(ask: DecideAsk) {
	return ask.limit ? [[span('The machine is at its largest angle.', 'alert')]] : [];
}

function difference(ask: DecideAsk): string {
	const by = ask.made.angle - ask.target;
	if (Math.abs(by) < 0.05) return `as wanted (${angle(ask.target)})`;
	return `${angle(Math.abs(by))} ${by < 0 ? 'short of' : 'over'} ${angle(ask.target)}`;
}
