import type { ToMeasure } from '../../../session/protocol/kinds.ts';
import { EVIDENCE_MEASURE } from '../../../session/protocol/measured-in.ts';
import { bendName } from '../../../words/bend-name.ts';
import { measureOf } from '../../../words/numbers.ts';
import { againWords, MEASURE_AGAIN, MEASURED, WHICH_BEND } from '../../../words/session/again.ts';
import { wrapped } from '../../text/line.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, numberField, type PageView } from './page.ts';
import { madeBends } from './reopen.ts';

/** The bends that the angle finder can be held to again: those made, and the one that stands to be decided. */
function bendsToMeasure(state: SessionState): number[] {
	const { ask } = state;
	return ask?.ask === 'decide' ? [...madeBends(state), ask.bend] : madeBends(state);
}

/** Straight to the only bend there is. */
export function measureAgainStep(state: SessionState): SessionStep | null {
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
		title: MEASURE_AGAIN,
		prompt: {
			label: WHICH_BEND.label,
			choices: bendsToMeasure(state).map((bend) => ({
				label: bendName(bend),
				step: { step: 'page', page: againOf({ kind: 'angle', bend }) },
			})),
			back: BACK,
			empty: WHICH_BEND.empty,
		},
		body: () => [],
	};
}

/** The number that was wanted once more. */
export function againPage(state: SessionState, of: ToMeasure): PageView {
	const { title, label, how } = againWords(of);
	const measure = of.kind === 'check' ? measureOf('check', state.job, of.name) : EVIDENCE_MEASURE[of.kind];
	return {
		title,
		prompt: {
			label,
			...numberField(measure, state.job, (reading) => againAnswer(of, reading)),
			back: BACK,
			empty: MEASURED.empty,
		},
		body: (room) => [{ rank: 0, lines: wrapped(how, room.columns) }],
	};
}

function againAnswer({ kind, bend }: ToMeasure, reading: number): SessionStep {
	if (kind === 'check' || bend === undefined) return answer({ do: 'reading', reading });
	return answer({ do: 'evidence', kind, bend, reading });
}
