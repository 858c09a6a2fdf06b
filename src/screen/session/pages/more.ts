import type { Plan } from '../../../session/protocol/asks.ts';
import { wrongNumber } from '../../../session/protocol/number-faults.ts';
import type { TubeTurn } from '../../../tube/turns.ts';
import { numberFaultWords } from '../../../words/refusal.ts';
import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS, MORE_TITLE, ONLY_BACK } from '../../../words/screen/usual.ts';
import { lineTold } from '../../../words/session/amend.ts';
import { askRelease, DETAIL, MORE, NOT_AS_ASKED, OTHER_PLAN, turnedBy, UNDO } from '../../../words/session/more.ts';
import { type Choice, NotTaken } from '../../shell/prompt.ts';
import { line, wrapped } from '../../text/line.ts';
import { asksRelease } from '../release.ts';
import type { Detail, Page, SessionState, SessionStep } from '../session-state.ts';
import { amendable } from './amend.ts';
import { measureAgainStep } from './measure-again.ts';
import { answer, BACK, numberField, type PageView } from './page.ts';
import { madeBends } from './reopen.ts';
import { isMoreToTell } from './what-if.ts';

function to(page: Page): SessionStep {
	return { step: 'page', page };
}

/** Everything that can be done besides answering. */
export function morePage(state: SessionState): PageView {
	return {
		title: MORE_TITLE,
		prompt: {
			label: CHOICE,
			// The numbers of what every page has stay the same, and what ends the tube is never one of them.
			choices: [
				...common(state),
				...sometimes(state),
				...own(state),
				...again(state),
				TO_HEAT,
				TO_HELP,
				TO_SCRAP,
				...rescueChoices(state),
			],
			back: BACK,
			star: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

/** Any bend that is made, whatever is asked. */
function again(state: SessionState): Choice<SessionStep>[] {
	const step = measureAgainStep(state);
	return step === null ? [] : [{ label: MORE.measureAgain, step }];
}

/** Only while the disk refuses. */
function rescueChoices({ unsaved, rescuePlace }: SessionState): Choice<SessionStep>[] {
	if (unsaved === null || rescuePlace === null) return [];
	const page: Page = { page: 'text', purpose: 'rescue', value: rescuePlace };
	return [{ label: MORE.elsewhere, step: to(page) }];
}

const TO_HELP: Choice<SessionStep> = { label: KEY_SAYS.help, step: to({ page: 'help', from: { page: 'more' } }) };
const TO_SCRAP: Choice<SessionStep> = { label: MORE.scrap, step: to({ page: 'text', purpose: 'scrap', value: '' }) };

const TO_HEAT: Choice<SessionStep> = {
	label: MORE.heat,
	step: to({ page: 'text', purpose: 'heat', value: '', from: { page: 'ask' } }),
};

/** From the plan that is in force to the other one. */
const PLANS: Record<Plan, Choice<SessionStep>> = {
	new: { label: OTHER_PLAN.new, step: answer({ do: 'plan', plan: 'old' }) },
	old: { label: OTHER_PLAN.old, step: answer({ do: 'plan', plan: 'new' }) },
};

/** What only the open ask allows. */
function own(state: SessionState): Choice<SessionStep>[] {
	const { ask, corrected } = state;
	switch (ask?.ask) {
		case 'set': {
			const detail = (of: Detail) => ({ label: NOT_AS_ASKED[of], step: to({ page: 'detail', of }) });
			const first = ask.bend === 1 && ask.seat === 1;
			return [
				...(ask.still ? [{ label: MORE.still, step: answer({ do: 'still' }) }] : []),
				...(corrected && ask.seat === 1 ? [PLANS[ask.plan]] : []),
				detail('mark'),
				detail('rotation'),
				...(first ? [detail('length')] : []),
			];
		}
		case 'pull': {
			const asked = asksRelease(state);
			return [
				{ label: MORE.takenOut, step: answer({ do: 'reseat' }) },
				{ label: askRelease(!asked), step: { step: 'release', asked: !asked } },
			];
		}
		case 'measure':
			return [{ label: MORE.skipMeasuring, step: answer({ do: 'skip' }) }];
		case 'check':
			return [{ label: MORE.skipCheck, step: answer({ do: 'skip' }) }];
		case 'decide':
			return [
				...(isMoreToTell(state) ? [{ label: MORE.whatIf, step: to({ page: 'whatIf' }) }] : []),
				{ label: MORE.why, step: to({ page: 'why' }) },
			];
		default:
			return [];
	}
}

function common({ practice }: SessionState): Choice<SessionStep>[] {
	return [
		{ label: MORE.note, step: to({ page: 'text', purpose: 'note', value: '' }) },
		{ label: MORE.undo, step: to({ page: 'undo' }) },
		{ label: MORE.evidence, step: to({ page: 'evidence' }) },
		{ label: MORE.leave(practice), step: answer({ do: 'quit' }) },
	];
}

/** What there is nothing for at first. */
function sometimes(state: SessionState): Choice<SessionStep>[] {
	return [
		...(amendable(state).length > 0 ? [{ label: MORE.amend, step: to({ page: 'amend' }) }] : []),
		...(madeBends(state).length > 0 ? [{ label: MORE.reopen, step: to({ page: 'reopen' }) }] : []),
	];
}

/** Taking back is asked once: it is one key away from a reading. */
export function undoPage(state: SessionState): PageView {
	const last = state.history.find(({ entry }) => entry === state.undoable);
	return {
		title: UNDO.title,
		prompt: {
			label: '',
			...(last === undefined ? {} : { plus: { label: UNDO.plus, step: answer({ do: 'undo' }) } }),
			back: BACK,
			empty: last === undefined ? ONLY_BACK : UNDO.empty,
		},
		body: (room) =>
			last === undefined
				? [{ rank: 0, lines: [line(UNDO.nothing)] }]
				: [
						{
							rank: 0,
							lines: wrapped(lineTold(last, state.job), room.columns, 'strong', 2),
						},
						{ rank: 0, lines: wrapped(UNDO.what, room.columns) },
					],
	};
}

/** The turn as it was asked for, and the rotation that a turn so far that way makes: the tube turns against it. */
function turnAsked({ ask }: SessionState): { label: string; rotation: (turned: number) => number } {
	const turn: TubeTurn = ask?.ask === 'set' ? ask.tubeTurn : { degrees: 0, way: 'none' };
	const against = turn.way === 'counterclockwise' || turn.way === 'either';
	const label = turnedBy(against ? 'counterclockwise' : 'clockwise', turn);
	return { label, rotation: (turned) => (against ? turned : -turned) };
}

/** One thing that is told together with `ready`. */
export function detailPage(state: SessionState, of: Detail): PageView {
	const isTurn = of === 'rotation';
	const { label, rotation } = isTurn ? turnAsked(state) : { label: DETAIL[of], rotation: (given: number) => given };
	return {
		title: DETAIL.title,
		prompt: {
			label,
			...numberField(isTurn ? 'angle' : 'length', state.job, (given) => {
				// Here and not at the next +, where nothing says how to give it anew.
				const fault = wrongNumber(given, of, state.job.units);
				if (fault !== null) throw new NotTaken(String(given), numberFaultWords(fault));
				return { step: 'detail', of, value: rotation(given) };
			}),
			back: BACK,
			empty: DETAIL.empty,
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(DETAIL.kept, columns) },
			{ rank: 1, lines: isTurn ? wrapped(DETAIL.seen, columns, 'quiet') : [] },
		],
	};
}
