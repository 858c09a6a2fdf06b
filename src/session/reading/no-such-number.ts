import type { State } from '../log/state.ts';
import type { Action } from '../protocol/action.ts';
import type { RefusalFact } from '../protocol/facts/index.ts';
import type { ReadingKind } from '../protocol/kinds.ts';
import { wrongNumber } from '../protocol/number-faults.ts';
import { dueCheck } from './check-reading.ts';

type GivenNumber = readonly [of: ReadingKind, value: number | undefined, name?: string];

/**
 * Why a number of an answer cannot be a reading of its kind, whichever shell it comes from, or null. An amendment is held against
 * the kind of the record that it corrects, which the caller knows: see `noSuchNumber`.
 */
export function noSuchNumberIn(state: State, action: Action): RefusalFact | null {
	for (const [of, value, name] of numbersGiven(state, action)) {
		const why = value === undefined ? null : noSuchNumber(state, { of, value, name });
		if (why !== null) return why;
	}
	return null;
}

/** Why a number cannot be a reading of that kind, or of the check of that name, or null. */
export function noSuchNumber(
	state: State,
	{ of, value, name }: { of: ReadingKind; value: number; name?: string | undefined },
): RefusalFact | null {
	const kind = of === 'check' ? dueCheck(state, name ?? '').check.kind : undefined;
	const why = wrongNumber(value, of, state.start.job.units, kind);
	if (why === null) return null;
	return { code: 'no-such-number', value, of, why, ...(kind === undefined ? {} : { name: name ?? '', kind }) };
}

function numbersGiven(state: State, action: Action): readonly GivenNumber[] {
	const { phase } = state;
	switch (action.do) {
		case 'ready':
			return (['pointer', 'mark', 'rotation', 'length'] as const).map((of) => [of, action[of]] as const);
		case 'loaded':
			return [
				['loaded', action.loaded],
				['released', action.released],
			];
		case 'angles':
			return action.angles.map((value) => ['angle', value] as const);
		case 'reading':
			if (phase.at === 'confirm') return [[phase.doubt.reading.of, action.reading, phase.doubt.reading.name]];
			return phase.at === 'check' ? [['check', action.reading, phase.queue[0]]] : [];
		default:
			return [];
	}
}
