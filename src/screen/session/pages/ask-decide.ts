import type { Advice, DecideAsk } from '../../../session/protocol/asks.ts';
import type { ToMeasure } from '../../../session/protocol/kinds.ts';
import { trimmed } from '../../../units/format.ts';
import { reasonWords } from '../../../words/reason.ts';
import { CHOICE, CHOOSE } from '../../../words/screen/usual.ts';
import { againLabel } from '../../../words/session/again.ts';
import { cameOutWords, DECIDE, headline } from '../../../words/session/decision.ts';
import { MORE } from '../../../words/session/more.ts';
import type { Choice } from '../../shell/prompt.ts';
import { bigNumbers } from '../../text/big-numbers.ts';
import { line, span, wrapped } from '../../text/line.ts';
import type { OpenBy, SessionState, Step } from '../session-state.ts';
import { measureAgainStep } from './measure-again.ts';
import { answer, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';
import { ladder } from './pulls.ts';
import { openingNumbers, reliefStep } from './reopen.ts';

/** What becomes of the bend: taken as it is, pulled more, opened a little, or the tube scrapped. */
export function decidePage(state: SessionState, ask: DecideAsk): PageView {
	const choices = choicesOf(state, ask);
	const advised = choices.filter((choice) => choice.advised);
	const [only] = advised;
	return {
		title: DECIDE.title,
		prompt: {
			label: CHOICE,
			choices,
			// Where the advice can be followed in two ways the program does not choose between them.
			...(advised.length === 1 && only !== undefined ? { plus: { label: DECIDE.plus, step: only.step } } : {}),
			slash: SLASH,
			star: STAR,
			empty: CHOOSE,
		},
		body: (room) => sections(state, ask, room),
	};
}

function choicesOf(state: SessionState, ask: DecideAsk): Choice<Step>[] {
	const by = (advice: Advice) => ({ advised: ask.advice === advice });
	const { mayOpen } = state.job;
	const relieve = reliefStep(state, ask.bend, { action: { do: 'relieve' } }, openingOf(ask));
	const choices: Choice<Step>[] = [
		{ label: DECIDE.accept, step: answer({ do: 'accept' }), ...by('accept') },
		{ label: DECIDE.pull, step: answer({ do: 'pull' }), ...by('pull') },
		...(mayOpen ? [{ label: DECIDE.open(ask.open), step: relieve, ...by('relieve') }] : []),
		{
			label: MORE.scrap,
			step: { step: 'page', page: { page: 'text', purpose: 'scrap', value: '' } },
			...by('scrap'),
		},
	];
	const again = measureAgainStep(state);
	const anyBend = again === null ? [] : [{ label: MORE.measureAgain, step: again }];
	if (typeof ask.of === 'object') return [measureFirst(ask.of), ...choices, ...anyBend];
	return [...choices, ...goingBack(state, ask, mayOpen), ...anyBend];
}

function goingBack(
	state: SessionState,
	{ of: bend, how: advised, advice }: DecideAsk,
	mayOpen: boolean,
): Choice<Step>[] {
	if (typeof bend !== 'number') return [];
	const go = (how: 'pull' | 'relieve') => ({
		advised: advice === 'reopen' && (advised === undefined || advised === how),
	});
	const reopen = (how: 'pull' | 'relieve') => ({ action: { do: 'reopen' as const, bend, how } });
	const open: Choice<Step> = {
		label: DECIDE.backTo(bend, 'relieve'),
		step: reliefStep(state, bend, reopen('relieve')),
		...go('relieve'),
	};
	return [
		{
			label: DECIDE.backTo(bend, 'pull'),
			step: { step: 'answer', answer: reopen('pull') },
			...go('pull'),
		},
		...(mayOpen ? [open] : []),
	];
}

/** First of all, since what is advised then rests on it. */
const measureFirst = (of: ToMeasure): Choice<Step> => ({
	label: againLabel(of),
	step: { step: 'page', page: { page: 'again', of } },
	advised: true,
});

function openingOf({ open: by, to }: DecideAsk): OpenBy | undefined {
	return by === undefined || to === undefined ? undefined : { by, to };
}

function sections(state: SessionState, ask: DecideAsk, room: Room): Section[] {
	const words = cameOutWords(ask);
	const made = { ...words.made, value: trimmed(ask.made.angle, 1), unit: '°', place: 1 } as const;
	const wanted = { ...words.wanted, value: trimmed(ask.target, 1), unit: '°', place: 3 } as const;
	// How it came out stands in the line above.
	const told = ask.reason.filter(({ code }) => code !== 'bend-made');
	const opening = openingOf(ask);
	// The line below says the same.
	const numbers: Section = { rank: 2, wide: true, extra: true, lines: bigNumbers([made, wanted], room) };
	return [
		{ rank: 0, lines: [line(headline(ask), 'strong')] },
		...(opening === undefined ? [numbers] : openingNumbers(opening, room, 1)),
		{ rank: 0, lines: [line(words.line)] },
		{ rank: 0, lines: [...wrapped(reasonWords(told, state.job), room.columns, 'strong'), ...limit(ask)] },
		...ladder(state, ask, room).map((section) => ({ ...section, rank: 1 })),
	];
}

function limit(ask: DecideAsk) {
	return ask.limit ? [[span(DECIDE.limit, 'alert')]] : [];
}
