import { suspectsOf } from '../fit/suspects.ts';
import { at } from './as-built.ts';
import { dueCheck } from './check-reading.ts';
import { builtNow } from './estimate.ts';
import { readingUnit } from './reading-words.ts';
import { show } from './show.ts';
import type { State } from './state.ts';

/** Further off than so many standard deviations two things said of one tube cannot both be. */
const GROSS = 4;

/**
 * Without the check readings, taken once, that cannot be what the tube reads by what was told of it since: else good angles would be
 * bent to fit both. They stay as read, and tell nothing more of the shape.
 */
export function withoutContradicted(state: State): State {
	const built = builtNow(state);
	const worst = suspectsOf(built).find(({ reading, off }) => {
		if (reading === null || off < GROSS) return false;
		return !at(built.input.readings, reading).confirmed;
	});
	if (!worst) return state;
	const { name, value } = at(built.input.readings, worst.reading ?? 0);
	const unit = readingUnit(state.start.job, 'check', dueCheck(state, name).check.name);
	const said = `Set aside: check "${name}", ${show(value)}${unit}, which does not go with what was told since.`;
	const checks = { ...state.checks, [name]: { reading: value, skipped: false, count: 0 as const } };
	return withoutContradicted({ ...state, checks, aside: state.aside ? `${state.aside} ${said}` : said });
}
