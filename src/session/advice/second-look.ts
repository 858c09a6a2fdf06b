/** No tube is given up, and no made bend is moved, on one reading: what has to be measured again before. */

import { at, largestFirst } from '../../maths/list.ts';
import { made, readingVariance } from '../../springback/filter.ts';
import { builtByAll } from '../estimate/estimate.ts';
import { bendAt, type State } from '../log/state.ts';
import type { ToMeasure } from '../protocol/kinds.ts';
import { suspectsAgainst, toMeasure } from './contradiction.ts';
import { isConfirmed, isMeasuredAgain } from './measured-again.ts';

/** Two readings that differ by no more say the same, degrees; and they bear out an angle that lies no further than this from them. */
const AGREE = 1;
const BEARS_OUT = 2;

/** As many readings that agree are right: where the angle is then still believed to be another, something else is wrong. */
const ENOUGH = 3;

/**
 * What to measure again before the tube is given up for the bend at work, or for all that is made: of those that lie off the drawing the
 * furthest, where no two independent readings of the finder agree. Null: the readings bear it out, or more of them would tell nothing.
 */
export function secondLook(state: State, of: 'bend' | 'tube'): ToMeasure | null {
	const suspect = of === 'bend' ? { bend: state.bend, ...made(state.filter) } : madeOff(state)[0];
	if (suspect === undefined || isBorneOut(state, suspect.bend, suspect.angle)) return null;
	return { kind: 'angle', bend: suspect.bend };
}

function isBorneOut(state: State, bend: number, angle: number): boolean {
	const { read } = bendAt(state, bend);
	return read.some((one, i) => {
		const agreeing = read.filter((other, j) => j !== i && Math.abs(one - other) <= AGREE);
		const bornOut = agreeing.some((other) => Math.abs((one + other) / 2 - angle) <= BEARS_OUT);
		return bornOut || agreeing.length + 1 >= ENOUGH;
	});
}

/** The bends so far that lie off the drawing by more than their tolerance, the furthest first. */
function madeOff(state: State): { bend: number; angle: number }[] {
	const { design, start } = state;
	const most = Math.max(start.job.tolerance.under, start.job.tolerance.over);
	const all = state.bends.flatMap(({ made: is }, i) => {
		const angle = i + 1 === state.bend ? made(state.filter).angle : is?.angle;
		if (angle === undefined) return [];
		return [{ bend: i + 1, angle, off: Math.abs(angle - at(design.shape.bends, i).angle) }];
	});
	return largestFirst(
		all.filter(({ off }) => off > most),
		({ off }) => off,
	);
}

/** Whether a bend's angle was read twice, or asked for twice, since it was last bent: so much is wanted before it is bent again on what was read. */
export function isReadTwice(state: State, bend: number): boolean {
	const { read } = bendAt(state, bend);
	const agree = read.some((one, i) => read.some((other, j) => j !== i && Math.abs(one - other) <= AGREE));
	return agree || isConfirmed(state, bend) || isMeasuredAgain(state, { kind: 'angle', bend });
}

/** So many standard deviations of the finder: one reading that is believed leaves less than one of them. */
const HARDLY = 2.5;

/** Whether the bend at work was read once, far from what was expected, and is known so much worse than a reading tells that nobody knows which is right. */
export function isHardlyKnown(state: State): boolean {
	const { filter, bend } = state;
	if (bendAt(state, bend).read.length === 0 || isReadTwice(state, bend)) return false;
	return made(filter).sd > HARDLY * Math.sqrt(readingVariance(filter, 'angle'));
}

/** More than this part of what is believed of it rests on it alone: a gross error of it would hardly show. */
const ALONE = 0.5;

/**
 * What to measure again before a made bend is moved, though nothing speaks against it: of what was told or read once, and little else says anything
 * of, the likeliest to be wrong. Null: all of that was measured again.
 */
export function toldOnce(state: State): ToMeasure | null {
	const built = builtByAll(state);
	const unheld = suspectsAgainst(built).filter(({ alone }) => alone > ALONE);
	return (
		largestFirst(unheld, ({ likely }) => likely)
			.flatMap((suspect) => toMeasure(built, suspect) ?? [])
			.find((again) => !wasTwice(state, again)) ?? null
	);
}

const wasTwice = (state: State, of: ToMeasure): boolean =>
	of.kind === 'angle' ? isReadTwice(state, of.bend ?? state.bend) : isMeasuredAgain(state, of);
