import type { Advice, DecideAsk } from '../../session/protocol.ts';
import { trimmed } from '../../units/format.ts';
import { line, span, wrapped } from '../line.ts';
import { bigNumbers } from '../parts/big-numbers.ts';
import type { Choice } from '../prompt.ts';
import type { SessionState, Step } from '../session-state.ts';
import { angle, plusMinus } from '../words.ts';
import { answer, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';
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
		body: (room) => sections(ask, room),
	};
}

function choicesOf(state: SessionState, ask: DecideAsk): Choice<Step>[] {
	const by = (advice: Advice) => ({ advised: ask.advice === advice });
	const open = ask.open === undefined ? 'a little' : `by ${angle(ask.open)}`;
	const choices: Choice<Step>[] = [
		{ label: 'accept the bend as it is', step: answer({ do: 'accept' }), ...by('accept') },
		{ label: 'pull it further', step: answer({ do: 'pull' }), ...by('pull') },
		{ label: `open it ${open}`, step: reliefStep(state, ask.bend, { action: { do: 'relieve' } }), ...by('relieve') },
		{
			label: 'scrap the tube',
			step: { step: 'page', page: { page: 'text', purpose: 'scrap', value: '' } },
			...by('scrap'),
		},
	];
	if (ask.of === undefined) return choices;
	const bend = ask.of;
	const reopen = (how: 'pull' | 'relieve') => ({ action: { do: 'reopen' as const, bend, how } });
	return [
		...choices,
		{
			label: `go back to bend ${bend} and pull it further`,
			step: { step: 'answer', answer: reopen('pull') },
			...by('reopen'),
		},
		{
			label: `go back to bend ${bend} and open it a little`,
			step: reliefStep(state, bend, reopen('relieve')),
			...by('reopen'),
		},
	];
}

function sections(ask: DecideAsk, room: Room): Section[] {
	const made = {
		label: `BEND ${ask.bend} MADE`,
		value: trimmed(ask.made.angle, 1),
		below: `± ${trimmed(Math.max(ask.made.sd, 0.1), 1)} degrees`,
		chief: true,
	};
	const wanted = {
		label: 'WANTED',
		value: trimmed(ask.target, 1),
		below: ask.target === ask.design ? 'as drawn' : `drawn ${angle(ask.design)}`,
	};
	return [
		{ rank: 1, lines: bigNumbers([made, wanted], room.columns, room.ink) },
		{ rank: 0, lines: [line(`made ${plusMinus(angle(ask.made.angle), ask.made.sd)}, ${difference(ask)}`)] },
		{ rank: 0, lines: [...wrapped(ask.why, room.columns, 'strong'), ...limit(ask)] },
	];
}

function limit(ask: DecideAsk) {
	return ask.limit ? [[span('The machine is at its largest angle.', 'alert')]] : [];
}

function difference(ask: DecideAsk): string {
	const by = ask.made.angle - ask.target;
	if (Math.abs(by) < 0.05) return `as wanted (${angle(ask.target)})`;
	return `${angle(Math.abs(by))} ${by < 0 ? 'short of' : 'past'} the ${angle(ask.target)} wanted`;
}
