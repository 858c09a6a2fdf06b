import { at } from '../maths/list.ts';
import { toolingOf } from '../tube/dies.ts';
import { takeEvidence } from './about-earlier.ts';
import { limitSpent } from './advice/bend-check.ts';
import { advisedAt } from './advice/whole-tube.ts';
import { type Decision, otherAsk, refuse } from './decision.ts';
import type { State } from './log/state.ts';
import type { Action } from './protocol/action.ts';
import type { ToMeasure } from './protocol/kinds.ts';
import { checkAgain } from './reading/check-again.ts';
import { noSuchNumber } from './reading/no-such-number.ts';
import { takeReadings } from './reading/take.ts';

/** What an answer to `decide` means. */
export function decided(action: Action, state: State): Decision {
	const { bend } = state;
	if (action.do === 'accept') {
		const { of: declined, again: unmeasured } = advisedAt(state);
		const passed = { ...(declined === undefined ? {} : { declined }), ...(unmeasured ? { unmeasured } : {}) };
		return { events: [{ type: 'bend-accepted', bend, ...passed }] };
	}
	if (action.do === 'relieve') {
		if (!state.start.job.mayOpen) return refuse({ code: 'may-not-open' });
		return { events: [{ type: 'relief-chosen', bend }] };
	}
	if (action.do === 'angles') return measuredAgain(state, 'angle', action.angles);
	if (action.do === 'reading') return measuredAgain(state, advisedAt(state).again?.kind ?? 'angle', [action.reading]);
	if (action.do !== 'pull') return otherAsk('decide', action);
	if (limitSpent(state)) {
		return refuse({ code: 'limit-spent', maxAngle: toolingOf(state.start.job, bend).maxAngle });
	}
	const { wanted } = advisedAt(state);
	return { events: [{ type: 'pull-chosen', bend, ...(wanted === undefined ? {} : { wanted }) }] };
}

/** The answer to the advice to measure something again, as a number where it was asked for. */
function measuredAgain(state: State, kind: ToMeasure['kind'], values: readonly number[]): Decision {
	const { again } = advisedAt(state);
	if (again?.kind !== kind) return refuse({ code: 'measured-already' });
	const { bend = state.bend, name } = again;
	if (kind === 'check') {
		const value = at(values, 0);
		const wrong = noSuchNumber(state, { of: 'check', value, name });
		return wrong === null ? { events: [checkAgain(state, name ?? '', value)] } : refuse(wrong);
	}
	if (kind !== 'angle') return takeEvidence(state, { do: 'evidence', kind, bend, reading: at(values, 0) });
	return {
		events: takeReadings(
			state,
			values.map((value) => ({ of: kind, value, bend, evidence: kind })),
		),
	};
}
