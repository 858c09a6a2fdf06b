import type { BendsLeft } from '../estimate/might-be.ts';
import { oddsOf } from '../estimate/odds.ts';
import type { State } from '../log/state.ts';
import { drawingNumbers } from '../plan/correction.ts';
import type { Numbers, Predicted } from '../protocol/asks.ts';
import type { CorrectedNote, Correction, Foretold } from '../protocol/notes.ts';

/** A correction with how sure it is: what the bends left will be off by themselves counts too. */
export function withForetold(state: State, note: Correction): CorrectedNote {
	return {
		...note,
		predicted: foretold(state, state.plan.corrected ?? state.plan.current, 'corrected', note.predicted),
		without: foretold(state, drawingNumbers(state), 'kept', note.without),
	};
}

function foretold(state: State, numbers: readonly Numbers[], left: BendsLeft, told: Predicted): Foretold {
	const { sd, checks, chance } = oddsOf(state, numbers, left, told);
	const { endOffset, endAngle, shape } = told;
	return {
		endOffset,
		endAngle,
		shape,
		sd,
		checks: told.checks.map(({ name, value }, i) => ({ name, value, sd: checks[i]! })),
		chance,
	};
}
