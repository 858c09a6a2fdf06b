import { made } from '../springback/filter.ts';
import { acceptance, atLimit, isOver, isShort, limitSpent, target } from './bend-check.ts';
import { RELIEF_CAUTION } from './cautions.ts';
import { dueCheck, uncutTrim } from './check-reading.ts';
import type { Advice } from './protocol.ts';
import { show } from './show.ts';
import type { State } from './state.ts';
import { bendAt } from './state.ts';

export interface Advised {
	advice: Advice;
	open?: number;
	limit: boolean;
	why: string;
}

/** Further over than this a bend is not worked back but given up, degrees. */
const BEYOND_RELIEF = 8;

/** What to do with the bend at work, and why in a sentence. */
export function advise(state: State): Advised {
	const { angle, sd } = made(state.filter);
	const { over, under, within } = acceptance(state);
	const bend = bendAt(state, state.bend);
	const aim = target(state);
	const is = `${state.aside ? `${state.aside} ` : ''}The bend is ${show(angle, 2)} degrees, give or take ${show(sd, 2)}; the target is ${show(aim, 2)}.`;
	if (isShort(state)) return short(state, is, under);
	if (!isOver(state)) {
		if (under > 0.5) return { advice: 'accept', limit: false, why: `${is} ${near(state, under)}` };
		return {
			advice: 'accept',
			limit: false,
			why: `${is} It lies within the tolerance with ${percent(within)}.${outside(state)}`,
		};
	}
	const by = angle - aim;
	const past = `${is} It passes the upper tolerance with ${percent(over)}.`;
	if (by > BEYOND_RELIEF) {
		return { advice: 'scrap', limit: false, why: `${past} That is too far to work back: the tube is better given up.` };
	}
	if (bend.relievedFrom !== null) {
		return {
			advice: 'accept',
			limit: false,
			why: `${past} It has been opened already: accept it, and what is left is corrected for it.`,
		};
	}
	return {
		advice: 'relieve',
		open: by,
		limit: false,
		why: `${past} Open it by ${show(by, 2)} degrees. ${RELIEF_CAUTION}`,
	};
}

function short(state: State, is: string, under: number): Advised {
	const limit = atLimit(state);
	const why = `${is} It is short of the tolerance with ${percent(under)}.`;
	if (limitSpent(state)) {
		return {
			advice: 'accept',
			limit,
			why: `${why} The machine's largest angle is reached and a seat added less than a dial step: accept it, and what is left is corrected for it.`,
		};
	}
	if (limit) {
		return {
			advice: 'pull',
			limit,
			why: `${why} The last pull stopped at the machine's largest angle: a fresh seat may still add a little.`,
		};
	}
	return { advice: 'pull', limit, why: `${why} Pull again.` };
}

/** Why a late bend that is probably short is taken as it is. */
function near(state: State, under: number): string {
	const { pulls } = state.filter;
	return `It is short of the tolerance with ${percent(under)}, but near it after ${pulls} pulls: accept it, and what is left is corrected for it.`;
}

/** Says which check of this bend lies outside its tolerance. */
function outside(state: State): string {
	const names = state.design.checks
		.filter(({ after }) => after === state.bend)
		.map(({ check }) => check.name)
		.filter((name) => checkFits(state, name, state.checks[name]?.reading ?? null) === false);
	return names.length === 0 ? '' : ` Outside its tolerance: ${names.join(', ')}.`;
}

/** Whether a reading lies within its check's tolerance; null without a reading. */
export function checkFits(state: State, name: string, reading: number | null): boolean | null {
	if (reading === null) return null;
	const { check, design } = dueCheck(state, name);
	return Math.abs(reading - uncutTrim(state, check) - design) <= check.tolerance + 1e-9;
}

/** What rounds to all of it is still not certain. */
function percent(part: number): string {
	const whole = Math.round(100 * part);
	return `${whole >= 100 ? 'more than 99' : whole} % probability`;
}
