import type { Plan } from '../../../session/protocol/asks.ts';
import { answeredWords } from '../../../words/answered.ts';
import { angle } from '../../../words/numbers.ts';
import { CHOICE, CHOOSE_OR_BACK, ONLY_BACK } from '../../../words/screen/usual.ts';
import type { Choice } from '../../shell/prompt.ts';
import { line, wrapped } from '../../text/line.ts';
import { asksRelease } from '../release.ts';
import type { Detail, Page, SessionState, Step } from '../session-state.ts';
import { amendable } from './amend.ts';
import { measureAgainStep } from './measure-again.ts';
import { answer, BACK, numberField, type PageView } from './page.ts';
import { madeBends } from './reopen.ts';
import { TELL_HEAT } from './start.ts';
import { canWeigh } from './what-if.ts';

function to(page: Page): Step {
	return { step: 'page', page };
}

/** Everything that can be done besides answering. */
export function morePage(state: SessionState): PageView {
	return {
		title: 'More',
		prompt: {
			label: CHOICE,
			// The numbers of what every page has stay the same, and what ends the tube is never one of them.
			choices: [
				...common(state),
				...sometimes(state),
				...own(state),
				...again(state),
				HEAT,
				HELP,
				SCRAP,
				...elsewhere(state),
			],
			back: BACK,
			star: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

/** Any bend that is made, whatever is asked. */
function again(state: SessionState): Choice<Step>[] {
	const step = measureAgainStep(state);
	return step === null ? [] : [{ label: 'measure a bend again', step }];
}

/** Only while the disk refuses. */
function elsewhere({ unsaved, rescuePlace }: SessionState): Choice<Step>[] {
	if (unsaved === null || rescuePlace === null) return [];
	const page: Page = { page: 'text', purpose: 'rescue', value: rescuePlace };
	return [{ label: 'go on in another folder: this disk refuses', step: to(page) }];
}

const HELP: Choice<Step> = { label: 'help', step: to({ page: 'help', from: { page: 'more' } }) };
const SCRAP: Choice<Step> = { label: 'scrap the tube', step: to({ page: 'text', purpose: 'scrap', value: '' }) };

const HEAT: Choice<Step> = {
	label: TELL_HEAT,
	step: to({ page: 'text', purpose: 'heat', value: '', from: { page: 'ask' } }),
};

/** From the plan that is in force to the other one. */
const PLANS: Record<Plan, Choice<Step>> = {
	new: { label: 'keep the numbers of before the correction', step: answer({ do: 'plan', plan: 'old' }) },
	old: { label: 'use the corrected numbers', step: answer({ do: 'plan', plan: 'new' }) },
};

/** What only the open ask allows. */
function own(state: SessionState): Choice<Step>[] {
	const { ask, corrected } = state;
	switch (ask?.ask) {
		case 'set': {
			const detail = (of: Detail, label: string) => ({ label, step: to({ page: 'detail', of }) });
			const first = ask.bend === 1 && ask.seat === 1;
			return [
				...(ask.still ? [{ label: 'it never left the die', step: answer({ do: 'still' }) }] : []),
				...(corrected && ask.seat === 1 ? [PLANS[ask.plan]] : []),
				detail('mark', 'the mark is somewhere else: tell where'),
				detail('rotation', 'the tube is turned otherwise: tell how'),
				...(first ? [detail('length', 'the piece is longer or shorter: tell how long')] : []),
			];
		}
		case 'pull':
			return [
				{ label: 'the tube has been out of the die', step: answer({ do: 'reseat' }) },
				asksRelease(state)
					? { label: 'go on without the dial after release', step: { step: 'release', asked: false } }
					: { label: 'ask for the dial after release again', step: { step: 'release', asked: true } },
			];
		case 'measure':
			return [{ label: 'skip: go on by the dial', step: answer({ do: 'skip' }) }];
		case 'check':
			return [{ label: 'skip this check', step: answer({ do: 'skip' }) }];
		case 'decide':
			return canWeigh(state)
				? [{ label: 'see what going back to a made bend would do', step: to({ page: 'whatIf' }) }]
				: [];
		default:
			return [];
	}
}

function common({ practice }: SessionState): Choice<Step>[] {
	return [
		{ label: 'write a note', step: to({ page: 'text', purpose: 'note', value: '' }) },
		{ label: 'take back the last answer', step: to({ page: 'undo' }) },
		{ label: 'tell something else that was measured', step: to({ page: 'evidence' }) },
		{
			label: practice ? 'leave: practice cannot be resumed' : 'leave, to go on another time',
			step: answer({ do: 'quit' }),
		},
	];
}

/** What there is nothing for at first. */
function sometimes(state: SessionState): Choice<Step>[] {
	return [
		...(amendable(state).length > 0 ? [{ label: 'correct an earlier reading', step: to({ page: 'amend' }) }] : []),
		...(madeBends(state).length > 0 ? [{ label: 'go back to a made bend', step: to({ page: 'reopen' }) }] : []),
	];
}

/** Taking back is asked once: it is one key away from a reading. */
export function undoPage(state: SessionState): PageView {
	const last = state.history.find(({ entry }) => entry === state.undoable);
	return {
		title: 'Take back',
		prompt: {
			label: '',
			...(last === undefined ? {} : { plus: { label: 'take it back', step: answer({ do: 'undo' }) } }),
			back: BACK,
			empty: last === undefined ? ONLY_BACK : 'Press + to take it back, / to leave it.',
		},
		body: (room) =>
			last === undefined
				? [{ rank: 0, lines: [line('There is nothing to take back.')] }]
				: [
						{
							rank: 0,
							lines: wrapped(`Line ${last.entry}: ${answeredWords(last, state.job)}`, room.columns, 'strong', 2),
						},
						{
							rank: 0,
							lines: wrapped(
								'The program asks its question again. The line stays in the log but no longer counts. What you did to the tube stays done.',
								room.columns,
							),
						},
					],
	};
}

/** The turn as it was asked for, and the rotation that a turn so far that way makes: the tube turns against it. */
function turnAsked({ ask }: SessionState): { label: string; rotation: (turned: number) => number } {
	const { degrees, way } = ask?.ask === 'set' ? ask.tubeTurn : { degrees: 0, way: 'none' as const };
	const against = way === 'counterclockwise' || way === 'either';
	const named = against ? 'counterclockwise' : 'clockwise';
	const asked = degrees === 0 ? '' : ` (asked: ${angle(degrees)})`;
	return { label: `Tube really turned ${named} by${asked}`, rotation: (turned) => (against ? turned : -turned) };
}

const DETAILS: Record<Detail, { label: string; measure: 'length' | 'angle' }> = {
	mark: { label: 'Where the mark really is, from the start end', measure: 'length' },
	rotation: { label: 'How the tube is really turned from the bend before', measure: 'angle' },
	length: { label: 'How long the piece really is', measure: 'length' },
};

/** One thing that is told together with `ready`. */
export function detailPage(state: SessionState, of: Detail): PageView {
	const { measure } = DETAILS[of];
	const turn = of === 'rotation' ? turnAsked(state) : null;
	const label = turn?.label ?? DETAILS[of].label;
	const value = turn?.rotation ?? ((given: number) => given);
	return {
		title: 'Not as asked',
		prompt: {
			label,
			...numberField(measure, state.job, (given) => ({ step: 'detail', of, value: value(given) })),
			back: BACK,
			empty: 'Write the number and press Enter; / goes back.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped('It is kept with the next +, and the numbers that follow take it into account.', room.columns),
			},
			...(of === 'rotation'
				? [
						{
							rank: 1,
							lines: wrapped(
								'Seen from the clamp side toward the far end; below 0 the other way.',
								room.columns,
								'quiet' as const,
							),
						},
					]
				: []),
		],
	};
}
