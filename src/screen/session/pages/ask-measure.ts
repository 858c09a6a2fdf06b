import type { ConfirmAsk, MeasureAsk } from '../../../session/protocol/asks.ts';
import { angleGiveOrTake, dial, measureOf, shown } from '../../../words/numbers.ts';
import { readingName } from '../../../words/readings.ts';
import { reasonWords } from '../../../words/reason.ts';
import { type Line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { aheadText } from '../typed-ahead.ts';
import { answer, expected, numberField, type PageView, SLASH, STAR } from './page.ts';

/** The bend is measured with the angle finder. */
export function measurePage(state: SessionState, ask: MeasureAsk): PageView {
	const second = isSecond(state, ask);
	const two = ask.readings === 2;
	const wanted = two ? `${TWO} ${reasonWords(ask.reason, state.job)}` : second ? SECOND : 'Measure once.';
	return {
		title: 'Measure the bend',
		prompt: {
			label: 'Let the tube go. What does the angle finder show?',
			...numberField('angle', state.job, (angle) => answer({ do: 'angles', angles: [angle] })),
			slash: SLASH,
			star: STAR,
			empty: 'Write what the angle finder reads and press Enter; * has skip.',
		},
		body: (room) => [
			{ rank: 0, lines: [expected(angleGiveOrTake(ask.expect))] },
			{ rank: 0, lines: wrapped(wanted, room.columns, two || second ? 'alert' : 'plain') },
			{ rank: 1, lines: wrapped(HOW_TO_READ, room.columns, 'quiet') },
		],
	};
}

const TWO = 'Measure twice: take the finder off and set it again for the second.';
const SECOND = 'Second reading: take the finder off, set it again and forget the first.';

/** Nothing else is answered between the two readings of a pull. */
function isSecond({ history }: SessionState, { readings }: MeasureAsk): boolean {
	const last = history.findLast((entry) => !entry.void);
	return readings === 1 && last?.readings?.some(({ of }) => of === 'angle') === true;
}

const HOW_TO_READ =
	'Hold the finder on both legs, clear of the bend. Read how far the tube is bent: a straight tube is 0.';

/** What came before this page could be read. */
function typedAhead(state: SessionState, columns: number): Line[] {
	const text = aheadText(state);
	return text === ''
		? []
		: wrapped(`Typed before you saw this: ${text}. Not used. Enter uses it now.`, columns, 'alert');
}

/** A reading far from what was expected: does it stand? */
export function confirmPage(state: SessionState, ask: ConfirmAsk): PageView {
	const measure = measureOf(ask.of, state.job, ask.name);
	// As it was typed: 6.75 must not stand there as 6.8.
	const given = measure === 'angle' ? dial(ask.reading) : shown(ask.reading, measure, state.job);
	return {
		title: 'Is that right?',
		prompt: {
			label: `Read it again: ${readingName(ask)}`,
			...numberField(measure, state.job, (reading) => answer({ do: 'reading', reading })),
			plus: { label: 'it stands', step: answer({ do: 'keep' }) },
			slash: SLASH,
			star: STAR,
			empty: 'Read it again: press + if it stands, or write the new reading and press Enter.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: [
					[span('You gave    '), span(given, 'alert')],
					// How far it may be off is in the reason below.
					[span('Expected    '), span(shown(ask.expect.value, measure, state.job), 'strong')],
				],
			},
			{ rank: 0, lines: wrapped(reasonWords(ask.reason, state.job), room.columns) },
			{ rank: 0, lines: typedAhead(state, room.columns) },
			{
				rank: 1,
				lines: wrapped(`Read it again. Still ${given}? Press +.`, room.columns),
			},
		],
	};
}
