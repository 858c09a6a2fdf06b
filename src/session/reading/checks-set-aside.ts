import { GROSS } from '../../fit/as-built.ts';
import { suspectsOf } from '../../fit/suspects.ts';
import { at } from '../../maths/list.ts';
import { builtByCounted } from '../estimate/estimate.ts';
import type { CheckState, State } from '../log/state.ts';
import type { AsideFact } from '../protocol/facts/index.ts';
import { dueCheck } from './check-reading.ts';

/**
 * Without the check readings, taken once, that cannot be what the tube reads by what was told of it since: else good angles would be
 * bent to fit both. They stay as read, and tell nothing more of the shape, until something told later goes with them again.
 */
export function withChecksSetAside(state: State): State {
	const before = Object.entries(state.checks).filter(([, { contradicted }]) => contradicted);
	const anew = before.map(([name, check]): [string, CheckState] => [name, countedOnce(check)]);
	const told = new Set(before.map(([name]) => name));
	return withWorstAside({ ...state, checks: { ...state.checks, ...Object.fromEntries(anew) } }, told);
}

const countedOnce = ({ contradicted: _, ...check }: CheckState): CheckState => ({ ...check, count: 1 });

/** `told`: of these checks it was said already. */
function withWorstAside(state: State, told: ReadonlySet<string>): State {
	// Nothing that was told of a bend is given up for a reading yet: these checks may go first.
	const built = builtByCounted(state);
	const [worst] = suspectsOf(built)
		.flatMap(({ reading, off }) => (reading === null || off < GROSS ? [] : [at(built.input.readings, reading)]))
		.filter(({ confirmed }) => !confirmed);
	if (!worst) return state;
	const { name, value } = worst;
	const { kind } = dueCheck(state, name).check;
	const said: AsideFact[] = told.has(name) ? [] : [{ code: 'check-contradicted', name, kind, value }];
	const check: CheckState = { ...state.checks[name], reading: value, skipped: false, count: 0, contradicted: true };
	return withWorstAside(
		{ ...state, checks: { ...state.checks, [name]: check }, aside: [...state.aside, ...said] },
		told,
	);
}
