import { judged, keeps } from '../../fit/judged.ts';
import { at } from '../../maths/list.ts';
import { frames } from '../../tube/frames.ts';
import { type Cloud, isLikely, oddsOf } from '../estimate/odds.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';
import { predicted } from '../plan/correction.ts';
import { limitsOf } from '../plan/design.ts';
import type { Predicted } from '../protocol/asks.ts';
import type { DoneNote, TellsMost } from '../protocol/notes.ts';
import { uncutTrim } from '../reading/check-reading.ts';
import { tellsMost } from './tells-most.ts';

/** What is said of a finished tube as a whole, and the tubes it may be that this is read off. */
export type Verdict = {
	[K in 'endOffset' | 'endAngle' | 'sd' | 'chance' | 'shape']: NonNullable<DoneNote[K]>;
} & Pick<DoneNote, 'fits'> & { cloud: Cloud };

/** From this chance on a tube is said to fit, from the other on that it may. */
export const FITS_FROM = 0.8;
const MAY_FIT = 0.5;

/** More likely than not, but not likely enough to be said to fit. */
export const mayFit = (fits: boolean, chance: number | null): boolean => !fits && chance !== null && chance >= MAY_FIT;

/** A state never changes, and its verdict is asked for more than once. */
const KNOWN = new WeakMap<State, Verdict>();

/** Null as long as a bend is not made. */
export function verdictOf(state: State): Verdict | null {
	if (!areAllBendsMade(state)) return null;
	const found = KNOWN.get(state) ?? reckonedVerdict(state);
	KNOWN.set(state, found);
	return found;
}

const areAllBendsMade = ({ bends }: State): boolean => bends.every(({ made }) => made !== null);

function reckonedVerdict(state: State): Verdict {
	const numbers = state.plan.current;
	const told = predicted(state, numbers);
	const { sd, chance, cloud } = oddsOf(state, numbers, 'kept', told);
	return {
		endOffset: told.endOffset,
		endAngle: told.endAngle,
		sd,
		chance,
		shape: told.shape,
		fits: chance >= FITS_FROM && keepsAsTold(state, told),
		cloud,
	};
}

/** Whether the likeliest tube, its checks as they were read, is within everything. */
function keepsAsTold(state: State, told: Predicted): boolean {
	const limits = limitsOf(state);
	const estimate = judged(frames(tubeAtWork(state, state.plan.current).shape), limits);
	const values = state.design.checks.map(({ check }, i) => {
		const reading = state.checks[check.name]?.reading ?? null;
		return reading === null ? at(told.checks, i).value : reading - uncutTrim(state, check);
	});
	return keeps({ ...estimate, values }, limits);
}

/** What a list says of a tube: whether it fits, and where not whether it may. As `verdictOf` says, without what only one tube's page tells. */
export function listedOf(state: State): { fits: boolean; mayFit: boolean } {
	if (!areAllBendsMade(state)) return { fits: false, mayFit: false };
	const numbers = state.plan.current;
	const likely = (least: number) => isLikely(state, numbers, 'kept', least);
	if (keepsAsTold(state, predicted(state, numbers)) && likely(FITS_FROM)) return { fits: true, mayFit: false };
	return { fits: false, mayFit: likely(MAY_FIT) };
}

const TOLD = new WeakMap<Verdict, TellsMost | null>();

/** The one more measurement that would say most of this tube: worked out where it is told, which a list of sessions never does. */
export function tellsMostOf(state: State, verdict: Verdict): TellsMost | null {
	const known = TOLD.get(verdict);
	if (known !== undefined) return known;
	const found = tellsMost(state, verdict.cloud, verdict.chance);
	TOLD.set(verdict, found);
	return found;
}
