import { type Filter, reopened } from '../../springback/filter.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import { type BendState, heldSinceOpened, largestLoaded } from './state.ts';

/** The filter at a bend that was left, which is known so far. */
export function backAt(filter: Filter, known: AngleEstimate, bend: BendState): Filter {
	return reopened(filter, known, largestLoaded(bend), heldSinceOpened(bend));
}
