import { made } from '../../springback/filter.ts';
import { isInside } from '../../tube/tolerance.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { Advice } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';
import { dueCheck, uncutTrim } from '../reading/check-reading.ts';
import { acceptance, atLimit, isOver, isShort, limitSpent, target } from './bend-check.ts';

export interface Advised {
	advice: Advice;
	open?: number;
	limit: boolean;
	reason: Reason[];
}

/** Further over than this a bend is not worked back but given up, degrees. */
const BEYOND_RELIEF = 8;

/** A bend is opened a little at a time. One that so many times did not bring near enough is taken as it is. */
const MOST_OPENINGS = 3;

/** How often the bend at work was opened since it was last pulled. */
const openings = (state: State): number => bendAt(state, state.bend).pulls.at(-1)?.opened?.length ?? 0;

/** What to do with the bend at work, and why: how it lies and what to do first, the numbers behind it last. */
export function adviseOnBend(state: State): Advised {
	const { over, under, within, nextTooFar } = acceptance(state);
	if (isShort(state)) return adviseForShort(state);
	if (!isOver(state)) {
		if (under > 0.5) return { advice: 'accept', limit: false, reason: near(state, under, nextTooFar) };
		const reason: Reason[] = [
			...state.aside,
			{ code: 'bend-inside', chance: within },
			...outside(state),
			numbers(state),
		];
		return { advice: 'accept', limit: false, reason };
	}
	const aim = target(state);
	const by = made(state.filter).angle - aim;
	const past = (...then: Reason[]): Reason[] => [
		...state.aside,
		{ code: 'bend-over', by, chance: over },
		...then,
		numbers(state),
	];
	if (by > BEYOND_RELIEF) return { advice: 'scrap', limit: false, reason: past({ code: 'too-far-to-open' }) };
	if (openings(state) >= MOST_OPENINGS) {
		return { advice: 'accept', limit: false, reason: past({ code: 'opened-already' }) };
	}
	if (!state.start.job.mayOpen) return { advice: 'accept', limit: false, reason: past({ code: 'opening-forbidden' }) };
	const open: Reason[] = [{ code: 'open-by', by, to: aim }, { code: 'go-easy-opening' }];
	return { advice: 'relieve', open: by, limit: false, reason: past(...open) };
}

function adviseForShort(state: State): Advised {
	const limit = atLimit(state);
	const by = target(state) - made(state.filter).angle;
	const is: Reason[] = [...state.aside, { code: 'bend-short', by, chance: acceptance(state).under }];
	if (limitSpent(state)) return { advice: 'accept', limit, reason: [...is, { code: 'limit-reached' }, numbers(state)] };
	return { advice: 'pull', limit, reason: [...is, { code: limit ? 'fresh-set-up' : 'pull-again' }, numbers(state)] };
}

/** Why a bend that is probably short is taken as it is: late, or the next stop would go too far. */
function near(state: State, chance: number, risk: number | null): Reason[] {
	const by = target(state) - made(state.filter).angle;
	const { pulls } = state.filter;
	const enough: Reason = risk === null ? { code: 'near-enough', pulls } : { code: 'next-too-far', chance: risk };
	return [...state.aside, { code: 'bend-short', by, chance }, enough, numbers(state)];
}

function numbers(state: State): Reason {
	const { angle, sd } = made(state.filter);
	return { code: 'bend-made', angle, sd, target: target(state) };
}

/** Which checks of this bend lie outside their tolerance. */
function outside(state: State): Reason[] {
	const names = state.design.checks
		.filter(({ after }) => after === state.bend)
		.map(({ check }) => check.name)
		.filter((name) => checkFits(state, name, state.checks[name]?.reading ?? null) === false);
	return names.length === 0 ? [] : [{ code: 'checks-outside', names }];
}

/** Whether a reading lies within its check's tolerance; null without a reading. */
export function checkFits(state: State, name: string, reading: number | null): boolean | null {
	if (reading === null) return null;
	const { check, design } = dueCheck(state, name);
	return isInside(reading - uncutTrim(state, check) - design, check.tolerance);
}
