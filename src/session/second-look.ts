/** No tube is given up on one reading: what has to be measured again before. */
import { made } from '../springback/filter.ts';
import { at } from './as-built.ts';
import type { AngleEstimate, ToMeasure } from './protocol.ts';
import { bendAt, type State } from './state.ts';

/** Two readings that differ by no more say the same, degrees; and they bear out an angle that lies no further than this from them. */
const AGREE = 1;
const BEARS_OUT = 2;

/**
 * What to measure again before the tube is given up for the bend at work, or for all that is `made`: the first bend of which no two
 * independent readings of the finder agree; the made ones that lie furthest from the drawing first. Null: the readings bear it out.
 */
export function secondLook(state: State, of: 'bend' | 'tube'): ToMeasure | null {
	const { angle } = made(state.filter);
	if (!isBorneOut(state, state.bend, angle)) return { kind: 'angle', bend: state.bend };
	const found = of === 'tube' ? madeOff(state).find(({ bend, is }) => !isBorneOut(state, bend, is.angle)) : undefined;
	return found === undefined ? null : { kind: 'angle', bend: found.bend };
}

function isBorneOut(state: State, bend: number, angle: number): boolean {
	const { read } = bendAt(state, bend);
	return read.some((one, i) =>
		read
			.slice(i + 1)
			.some((other) => Math.abs(one - other) <= AGREE && Math.abs((one + other) / 2 - angle) <= BEARS_OUT),
	);
}

/** The other bends that were made off the drawing by more than their tolerance. */
function madeOff({ bends, bend: atWork, design, start }: State): { bend: number; is: AngleEstimate; off: number }[] {
	const most = Math.max(start.job.tolerance.under, start.job.tolerance.over);
	return bends
		.flatMap(({ made: is }, i) => {
			if (is === null || i + 1 === atWork) return [];
			return [{ bend: i + 1, is, off: Math.abs(is.angle - at(design.shape.bends, i).angle) }];
		})
		.filter(({ off }) => off > most)
		.sort((a, b) => b.off - a.off);
}
