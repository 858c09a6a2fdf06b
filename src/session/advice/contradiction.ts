/** Readings that cannot all be right: which of them is to be taken again before anything is built on them. */
import type { AsBuilt } from '../../fit/built-tube.ts';
import { LARGEST_GROSS, type Suspect, suspectsOf } from '../../fit/suspects.ts';
import { at, largestFirst, meanOf } from '../../maths/list.ts';
import { BURNT } from '../../units/tape.ts';
import { convertLength, type Units } from '../../units/units.ts';
import { builtByAll } from '../estimate/estimate.ts';
import { bendAt, type State } from '../log/state.ts';
import type { AgainstFact } from '../protocol/facts/index.ts';
import type { ToMeasure } from '../protocol/kinds.ts';
import { dueCheck } from '../reading/check-reading.ts';
import { isMeasuredAgain } from './measured-again.ts';

export interface Contradiction {
	again: ToMeasure;
	reason: AgainstFact;
}

/** Further off than so many standard deviations of what all the rest leads to expect, errors do not explain it. */
export const CANNOT_BE = 3;
/** What a set-up is spent on, or the tube given up for, must not hang on a reading this far off. */
export const IN_DOUBT = 2;

/** Logarithm of a likelihood: twenty times likelier with it wrong it is asked for, however near it lies. */
const PLAINLY = 3;

/** Logarithms of likelihoods that differ by less say the same. */
const AS_LIKELY = 0.7;

/** So many standard deviations of what the rest says of it a mark may be from where an inch forgotten would have it. */
const NEAR = 2;

/** On which tape a mark lies off by what was held on the end and forgotten, or left out twice: no scatter of hands, but the commonest slip. Null: on none. */
function burntOn({ kind, value, would, off }: Suspect, units: Units): Units | null {
	const by = Math.abs(value - would);
	const isNear = (of: Units) => Math.abs(by - convertLength(BURNT[of], of, units)) <= (NEAR * by) / off;
	// Nearer to the rest it may as well be anything.
	if (kind !== 'mark' || off < CANNOT_BE) return null;
	return (['in', 'mm'] as const).find(isNear) ?? null;
}

/**
 * What to measure again where one thing told or read of the tube contradicts the rest by more than their errors explain, `least` standard
 * deviations: what is most likely wrong by all that is known, every one being so as often as another. Null: nothing does, or all that may be
 * wrong was measured again.
 */
export function contradiction(state: State, least = CANNOT_BE): Contradiction | null {
	const built = builtByAll(state);
	const suspects = suspectsAgainst(built);
	const wrong = toAskFor(state, built, suspects, least);
	return wrong ? { again: wrong.again, reason: againstFact(state, built, suspects, wrong.suspect, wrong.again) } : null;
}

/** Nothing contradicts anything before the first check is read. */
export const suspectsAgainst = (built: AsBuilt): Suspect[] =>
	built.input.readings.length === 0 ? [] : suspectsOf(built);

/** Of these the likeliest to be wrong that can be measured again and was not; undefined: none. */
function toAskFor(state: State, built: AsBuilt, suspects: readonly Suspect[], least: number) {
	const isDoubted = ({ off, likely }: Suspect) => off >= least || likely >= PLAINLY;
	const mayBe = (suspect: Suspect) => explains(suspect) || burntOn(suspect, state.start.job.units) !== null;
	const possible = suspects.filter((suspect) => isDoubted(suspect) && mayBe(suspect));
	return largestFirst(possible, suspectWeight).flatMap((suspect) => {
		const again = toMeasure(built, suspect);
		return again === null || isMeasuredAgain(state, again) ? [] : [{ suspect, again }];
	})[0];
}

/** Whether it is what is wrong, if anything is: the largest gross error of it leaves no more than errors explain. */
function explains({ value, would, sd, off }: Suspect): boolean {
	return off * (1 - (LARGEST_GROSS * sd) / Math.abs(value - would)) <= CANNOT_BE;
}

/**
 * Whether something is in doubt still, all that may be wrong having been measured again. Then something else is wrong, and nobody knows what: no bend
 * is moved on such ground.
 */
export function isAtOdds(state: State): boolean {
	const built = builtByAll(state);
	const suspects = suspectsAgainst(built);
	const isDoubted = suspects.some(({ off }) => off >= IN_DOUBT);
	return isDoubted && toAskFor(state, built, suspects, IN_DOUBT) === undefined;
}

/** Of two as likely the bend comes first: what is built on its angle is all that follows, and the finder is at hand. */
const suspectWeight = ({ likely, kind }: Suspect): number => likely + (kind === 'angle' ? AS_LIKELY : 0);

/** Null for what has no name to be asked for by: the straight before a bend. */
export function toMeasure({ input }: AsBuilt, { kind, bend, reading }: Suspect): ToMeasure | null {
	if (kind !== 'reading') return { kind, bend: 1 + (bend ?? 0) };
	const { name, check } = at(input.readings, reading ?? 0);
	return check ? { kind: 'check', name } : null;
}

/** The check that goes against it most, and what it goes against. */
function againstFact(
	state: State,
	{ input }: AsBuilt,
	suspects: readonly Suspect[],
	wrong: Suspect,
	again: ToMeasure,
): AgainstFact {
	const checks = suspects.flatMap(({ reading, off }) => {
		const read = reading === null ? undefined : input.readings[reading];
		return read?.check && reading !== null ? [{ reading, name: read.name, value: read.value, off }] : [];
	});
	const speaks = checks.find(({ reading }) => reading === wrong.reading) ?? checks[0];
	const told = again.kind === 'angle' ? finderOr(state, again.bend ?? state.bend, wrong.value) : wrong.value;
	const burnt = burntOn(wrong, state.start.job.units);
	const of: AgainstFact = { code: 'does-not-go', again, value: told, ...(burnt ? { burnt } : {}) };
	if (!speaks) return of;
	const { check, design } = dueCheck(state, speaks.name);
	const { name, kind, tolerance } = check;
	return { ...of, check: { name, kind, reading: speaks.value, off: speaks.value - design, tolerance } };
}

/** What the finder showed, where it was used: the number that the operator knows. */
function finderOr(state: State, bend: number, told: number): number {
	const { read } = bendAt(state, bend);
	return read.length === 0 ? told : meanOf(read);
}
