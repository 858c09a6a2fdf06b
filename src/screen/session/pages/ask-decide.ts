import type { Advice, DecideAsk } from '../../../session/protocol/asks.ts';
import type { ToMeasure } from '../../../session/protocol/kinds.ts';
import { trimmed } from '../../../units/format.ts';
import { reasonTexts, reasonWords } from '../../../words/reason.ts';
import { CHOICE, CHOOSE, ONLY_BACK } from '../../../words/screen/usual.ts';
import { againLabel } from '../../../words/session/again.ts';
import { cameOutWords, DECIDE, headline } from '../../../words/session/ask-decide.ts';
import { MORE } from '../../../words/session/more.ts';
import type { Choice } from '../../shell/prompt.ts';
import { bigNumbers } from '../../text/big-numbers.ts';
import { type Line, line, span, wholeTexts, wrapped } from '../../text/line.ts';
import type { OpenBy, SessionState, SessionStep } from '../session-state.ts';
import { measureAgainStep } from './measure-again.ts';
import { answer, BACK, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';
import { ladder } from './pulls.ts';
import { openingNumbers, reliefStep } from './reopen.ts';

/** What becomes of the bend: taken as it is, pulled more, opened a little, or the tube scrapped. */
export function decidePage(state: SessionState, ask: DecideAsk): PageView {
	const choices = decideChoices(state, ask);
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
		body: (room) => decideSections(state, ask, room),
	};
}

function decideChoices(state: SessionState, ask: DecideAsk): Choice<SessionStep>[] {
	const by = (advice: Advice) => ({ advised: ask.advice === advice });
	const { mayOpen } = state.job;
	const relieve = reliefStep(state, ask.bend, { action: { do: 'relieve' } }, openByOf(ask));
	const choices: Choice<SessionStep>[] = [
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
	if (typeof ask.of === 'object') return [measureFirstChoice(ask.of), ...choices, ...anyBend];
	return [...choices, ...goingBack(state, ask, mayOpen), ...anyBend];
}

function goingBack(
	state: SessionState,
	{ of: bend, how: advised, advice }: DecideAsk,
	mayOpen: boolean,
): Choice<SessionStep>[] {
	if (typeof bend !== 'number') return [];
	const go = (how: 'pull' | 'relieve') => ({
		advised: advice === 'reopen' && (advised === undefined || advised === how),
	});
	const reopen = (how: 'pull' | 'relieve') => ({ action: { do: 'reopen' as const, bend, how } });
	const open: Choice<SessionStep> = {
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
const measureFirstChoice = (of: ToMeasure): Choice<SessionStep> => ({
	label: againLabel(of),
	step: { step: 'page', page: { page: 'again', of } },
	advised: true,
});

function openByOf({ open: by, to }: DecideAsk): OpenBy | undefined {
	return by === undefined || to === undefined ? undefined : { by, to };
}

function decideSections(state: SessionState, ask: DecideAsk, room: Room): Section[] {
	const words = cameOutWords(ask);
	const made = { ...words.made, value: trimmed(ask.made.angle, 1), unit: '°', place: 1 } as const;
	const wanted = { ...words.wanted, value: trimmed(ask.target, 1), unit: '°', place: 3 } as const;
	const opening = openByOf(ask);
	// The line below says the same.
	const numbers: Section = { rank: 2, wide: true, extra: true, lines: bigNumbers([made, wanted], room) };
	const above = [line(headline(ask), 'strong'), line(words.line)];
	const [shown, rest] = wholeTexts(
		reasonTexts(reasonsTold(ask), state.job),
		room.columns,
		room.free - above.length - decideLimit(ask).length,
	);
	return [
		{ rank: 0, lines: above.slice(0, 1) },
		...(opening === undefined ? [numbers] : openingNumbers(opening, room, 1)),
		{ rank: 0, lines: above.slice(1) },
		{ rank: 0, lines: [...wrapped(shown, room.columns, 'strong'), ...decideLimit(ask)] },
		// What has no room stands behind `*`.
		{ rank: 1, lines: wrapped(rest, room.columns, 'strong') },
		...ladder(state, ask, room).map((section) => ({ ...section, rank: 1 })),
	];
}

/** Why that is advised; how the bend came out stands in a line of its own. */
const reasonsTold = ({ reason }: DecideAsk) => reason.filter(({ code }) => code !== 'bend-made');

/** All of the reason, for a window that has no room for it beside the choices. */
export function whyPage(state: SessionState): PageView {
	const { ask, job } = state;
	return {
		title: DECIDE.why,
		prompt: { label: '', back: BACK, empty: ONLY_BACK },
		body: ({ columns }) =>
			ask?.ask === 'decide' ? [{ rank: 0, lines: wrapped(reasonWords(reasonsTold(ask), job), columns) }] : [],
	};
}

function decideLimit(ask: DecideAsk): Line[] {
	return ask.limit ? [[span(DECIDE.limit, 'alert')]] : [];
}
