/** What is measured again before the advice on a tube is followed. */
import type { State } from '../log/state.ts';
import type { Reason } from '../protocol/facts/index.ts';
import type { ToMeasure } from '../protocol/kinds.ts';
import type { Advised } from './bend-alone.ts';
import { type Contradiction, contradiction, IN_DOUBT } from './contradiction.ts';
import { isHardlyKnown, isReadTwice, secondLook, toldOnce } from './second-look.ts';
import type { TubeAdvice } from './tube-advice.ts';

/**
 * What costs a set-up, or the tube, does not rest on one reading, or on readings that hardly go with each other. Nor is a bend taken, or pulled closer
 * for the tube's sake, on a reading that is half disbelieved.
 */
export function surely(state: State, advised: TubeAdvice): TubeAdvice {
	const { advice, of: bend = state.bend } = advised;
	const angle = { kind: 'angle' as const, bend };
	if (advice === 'measure' || (advice === 'pull' && advised.wanted === undefined)) return advised;
	if (advice === 'accept' || advice === 'pull') {
		const first: Reason = { code: 'measure-first', bend, before: 'take' };
		return isHardlyKnown(state) ? adviseMeasuringFirst(advised, angle, first) : advised;
	}
	const doubtful = contradiction(state, IN_DOUBT);
	if (doubtful !== null) return adviseMeasuring(state, advised, doubtful);
	if (advice === 'scrap') return advised;
	const again = toldOnce(state) ?? (isReadTwice(state, bend) ? null : angle);
	const before = advice === 'relieve' ? 'open' : 'go-back';
	return again === null ? advised : adviseMeasuringFirst(advised, again, moveFact(state, again, before));
}

/** What little else shows is measured before a made bend is moved. */
function moveFact(state: State, again: ToMeasure, before: 'open' | 'go-back'): Reason {
	const { kind, bend = state.bend } = again;
	return { code: 'measure-first', bend, before, ...(kind === 'angle' ? {} : { again }) };
}

function adviseMeasuringFirst(advised: TubeAdvice, again: ToMeasure, first: Reason): TubeAdvice {
	const { open: _, of: __, how: ___, ...rest } = advised;
	return { ...rest, advice: 'measure', again, reason: [first, ...withoutOpening(advised.reason).filter(isNoOrder)] };
}

/** What to do with the bend is not told beside that it is to be measured first. */
const isNoOrder = ({ code }: Reason) => code !== 'needed-closer' && code !== 'touch-more' && code !== 'taken-as-it-is';

/** Without how to open the bend. */
export const withoutOpening = (reason: readonly Reason[]) =>
	reason.filter(({ code }) => code !== 'open-by' && code !== 'go-easy-opening');

/** Of readings that cannot all be right the likeliest to be wrong is taken again before anything rests on it. */
export function adviseMeasuring(state: State, { limit }: Advised, { again, reason }: Contradiction): TubeAdvice {
	return { advice: 'measure', again, limit, reason: [...state.aside, reason] };
}

/** Where what the tube would be given up for rests on one reading, that is read again first. */
export function notOnOneReading(state: State, advised: Advised, alone: Advised): TubeAdvice {
	const again = secondLook(state, alone.advice === 'scrap' ? 'bend' : 'tube');
	if (again === null) return advised;
	const first: Reason = { code: 'measure-first', bend: again.bend ?? state.bend, before: 'scrap' };
	return { ...advised, advice: 'measure', again, reason: [first, ...advised.reason] };
}
