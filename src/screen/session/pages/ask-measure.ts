import type { ConfirmAsk, MeasureAsk } from '../../../session/protocol/asks.ts';
import { angleGiveOrTake, measureOf } from '../../../words/numbers.ts';
import { reasonWords } from '../../../words/reason.ts';
import { CONFIRM, doubtedWords, MEASURE, measureTimes } from '../../../words/session/ask-measure.ts';
import { typedAheadWords } from '../../../words/session/said.ts';
import { type Line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { aheadText, canBeTakenUp } from '../typed-ahead.ts';
import { answer, expectedLine, numberField, type PageView, SLASH, STAR } from './page.ts';

/** The bend is measured with the angle finder. */
export function measurePage(state: SessionState, ask: MeasureAsk): PageView {
	const second = isSecond(state, ask);
	const tone = ask.readings === 2 || second ? 'alert' : 'plain';
	return {
		title: MEASURE.title,
		prompt: {
			label: MEASURE.label,
			...numberField('angle', state.job, (angle) => answer({ do: 'angles', angles: [angle] })),
			slash: SLASH,
			star: STAR,
			empty: MEASURE.empty,
		},
		body: (room) => [
			{ rank: 0, lines: [expectedLine(angleGiveOrTake(ask.expect))] },
			{ rank: 0, lines: wrapped(measureTimes(ask, second, state.job), room.columns, tone) },
			{ rank: 1, lines: wrapped(MEASURE.how, room.columns, 'quiet') },
		],
	};
}

/** Nothing else is answered between the two readings of a pull. */
function isSecond({ history }: SessionState, { readings }: MeasureAsk): boolean {
	const last = history.findLast((entry) => !entry.void);
	return readings === 1 && last?.readings?.some(({ of }) => of === 'angle') === true;
}

/** What came before this page could be read. */
function typedAhead(state: SessionState, columns: number): Line[] {
	const text = aheadText(state);
	return text === '' ? [] : wrapped(typedAheadWords(text, canBeTakenUp(state)), columns, 'alert');
}

/** Columns before the two numbers that are held side by side. */
const GIVEN = 12;

/** A reading far from what was expected: does it stand? */
export function confirmPage(state: SessionState, ask: ConfirmAsk): PageView {
	const { given, expected: about } = doubtedWords(ask, state.job);
	return {
		title: CONFIRM.title,
		prompt: {
			label: CONFIRM.label(ask),
			...numberField(measureOf(ask.of, state.job, ask.name), state.job, (reading) =>
				answer({ do: 'reading', reading }),
			),
			plus: { label: CONFIRM.plus, step: answer({ do: 'keep' }) },
			slash: SLASH,
			star: STAR,
			empty: CONFIRM.empty,
		},
		body: (room) => [
			{
				rank: 0,
				lines: [
					[span(CONFIRM.given.padEnd(GIVEN)), span(given, 'alert')],
					// How far it may be off is in the reason below.
					[span(CONFIRM.expected.padEnd(GIVEN)), span(about, 'strong')],
				],
			},
			{ rank: 0, lines: wrapped(reasonWords(ask.reason, state.job), room.columns) },
			{ rank: 0, lines: typedAhead(state, room.columns) },
			{ rank: 1, lines: wrapped(CONFIRM.again(ask.of, given), room.columns) },
		],
	};
}
