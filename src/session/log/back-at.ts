import { type Filter, newBend, reopened } from '../../springback/filter.ts';
import { atDie } from '../../springback/several-dies.ts';
import { dieOf } from '../../tube/dies.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import { bendAt, heldSinceOpened, largestLoaded, type State } from './state.ts';

type AtWork = Pick<State, 'filter' | 'start'>;

/** The filter at a bend (from 1) that was not pulled yet, its die in the machine. */
export function beginAt({ filter, start }: AtWork, number: number): Filter {
	return newBend(atDie(filter, dieOf(start.job, number)));
}

/** The filter at a bend (from 1) that was left, which is known so far, its die in the machine. */
export function backAt(state: State, number: number, known: AngleEstimate): Filter {
	const bend = bendAt(state, number);
	const filter = atDie(state.filter, dieOf(state.start.job, number));
	return reopened(filter, known, largestLoaded(bend), heldSinceOpened(bend));
}
