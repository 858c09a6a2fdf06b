import type { ToMeasure } from '../../../session/protocol/kinds.ts';
import type { MeasuredIn } from '../../../session/protocol/measured-in.ts';
import { foreignName } from '../../../words/foreign.ts';
import { measureOf } from '../../../words/numbers.ts';
import { wrapped } from '../../text/line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { answer, BACK, numberField, type PageView } from './page.ts';
import { madeBends } from './reopen.ts';

/** The bends that the angle finder can be held to again: those made, and the one that stands to be decided. */
function bendsToMeasure(state: SessionState): number[] {
	const { ask } = state;
	return ask?.ask === 'decide' ? [...madeBends(state), ask.bend] : madeBends(state);
}

/** Straight to the only bend there is. */
export function measureAgainStep(state: SessionState): Step | null {
	const bends = bendsToMeasure(state);
	const [only] = bends;
	if (only === undefined) return null;
	const page = bends.length === 1 ? againOf({ kind: 'angle', bend: only }) : ({ page: 'measureAgain' } as const);
	return { step: 'page', page };
}

const againOf = (of: ToMeasure) => ({ page: 'again', of }) as const;

/** Which bend. */
export function measureAgainPage(state: SessionState): PageView {
	return {
		title: 'Measure a bend again',
		prompt: {
			label: "The bend's number",
			choices: bendsToMeasure(state).map((bend) => ({
				label: `bend ${bend}`,
				step: { step: 'page', page: againOf({ kind: 'angle', bend }) },
			})),
			back: BACK,
			empty: "Write the bend's number and press Enter; / goes back.",
		},
		body: () => [],
	};
}

/** The number that was wanted once more. */
export function againPage(state: SessionState, of: ToMeasure): PageView {
	const { title, label, how, measure } = wordsOf(state, of);
	return {
		title,
		prompt: {
			label,
			...numberField(measure, state.job, (reading) => answerOf(of, reading)),
			back: BACK,
			empty: 'Write what it reads and press Enter; / goes back.',
		},
		body: (room) => [{ rank: 0, lines: wrapped(how, room.columns) }],
	};
}

function answerOf({ kind, bend }: ToMeasure, reading: number): Step {
	if (kind === 'check' || bend === undefined) return answer({ do: 'reading', reading });
	return answer({ do: 'evidence', kind, bend, reading });
}

/** What to do again, as a choice of the decision. */
export function againLabel({ kind, bend, name }: ToMeasure): string {
	switch (kind) {
		case 'angle':
			return `measure bend ${bend} again`;
		case 'check':
			return `read the ${foreignName(name ?? '')} again`;
		case 'mark':
			return `measure where the mark of bend ${bend} is`;
		case 'rotation':
			return `read back how bend ${bend} lies`;
	}
}

interface Words {
	title: string;
	label: string;
	how: string;
	measure: MeasuredIn;
}

function wordsOf({ job }: SessionState, { kind, bend, name }: ToMeasure): Words {
	const anew = 'Do not look at what it read before.';
	switch (kind) {
		case 'angle':
			return {
				title: `Measure bend ${bend} again`,
				label: 'What does the angle finder show?',
				how: `Hold the finder on both legs, clear of the bend. ${anew}`,
				measure: 'angle',
			};
		case 'check':
			return {
				title: `Read the ${foreignName(name ?? '')} again`,
				label: 'What does it measure?',
				how: `Lay it on anew, where the check says. ${anew}`,
				measure: measureOf('check', job, name),
			};
		case 'mark':
			return {
				title: `The mark of bend ${bend}`,
				label: 'Where is it, from the start end?',
				how: `Measure from the start end to where the bend begins. ${anew}`,
				measure: 'length',
			};
		case 'rotation':
			return {
				title: `The turn of bend ${bend}`,
				label: 'How does it lie to the bend before?',
				how: `Read how the plane of bend ${bend} lies to that of bend ${(bend ?? 1) - 1}. ${anew}`,
				measure: 'angle',
			};
	}
}
