import { at } from '../../maths/list.ts';
import { checkReadingSd } from '../estimate/hands.ts';
import type { Event } from '../log/events.ts';
import type { State } from '../log/state.ts';
import { dueCheck, expectCheck } from './check-reading.ts';

/** Two readings of one check that differ by no more than so many standard deviations of one of them say the same: three of their difference. */
const AGREE = 3 * Math.SQRT2;

/**
 * A check that was read before, read again since something goes against it: two that agree stand together; else the one that goes better with all
 * the rest counts, and the other is set aside.
 */
export function checkAgain(state: State, name: string, value: number): Event {
	const before = state.checks[name]?.reading ?? value;
	const settled = (counts: number, count: 1 | 2, setAside: number[]): Event => ({
		type: 'doubt-settled',
		reading: { of: 'check', name, value: counts },
		count,
		setAside,
	});
	const sd = checkReadingSd(state.start, dueCheck(state, name).check);
	if (Math.abs(value - before) <= AGREE * sd) return settled((value + before) / 2, 2, []);
	const { [name]: _, ...rest } = state.checks;
	const expected = expectCheck({ ...state, checks: rest }, name).value;
	const nearest = [value, before].toSorted((a, b) => Math.abs(a - expected) - Math.abs(b - expected));
	return settled(at(nearest, 0), 1, [at(nearest, 1)]);
}
