/** No tube is given up on one reading: what has to be measured again before. */
import { made } from '../springback/filter.ts';
import { at } from './as-built.ts';
import type { ToMeasure } from './protocol.ts';
import { bendAt, type State } from './state.ts';

/** Two readings that differ by no more say the same, degrees; and they bear out an angle that lies no further than this from them. */
const AGREE = 1;
const BEARS_OUT = 2;

/**
 * What to measure again before the tube is given up for the bend at work, or for all that is made: the first bend of which no two
 * independent readings of the finder agree; of all that lie off the drawing the furthest first. Null: the readings bear it out.
 */
export function secondLook(state: State, of: 'bend' | 'tube'): ToMeasure | null {
	const suspects = of === 'bend' ? [{ bend: state.bend, ...made(state.filter) }] : madeOff(state);
	const found = suspects.find(({ bend, angle }) => !isBorneOut(state, bend, angle));
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

/** The bends so far that lie off the drawing by more than their tolerance, the furthest first. */
function madeOff(state: State): { bend: number; angle: number }[] {
	const { design, start } = state;
	const most = Math.max(start.job.tolerance.under, start.job.tolerance.over);
	return state.bends
		.flatMap(({ made: is }, i) => {
			const angle = i + 1 === state.bend ? made(state.filter).angle : is?.angle;
			if (angle === undefined) return [];
			return [{ bend: i + 1, angle, off: Math.abs(angle - at(design.shape.bends, i).angle) }];
		})
		.filter(({ off }) => off > most)
		.sort((a, b) => b.off - a.off);
}
