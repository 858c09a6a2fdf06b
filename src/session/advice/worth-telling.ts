import { farEndMotion, type Motion } from '../../fit/kinematics.ts';
import { at } from '../../maths/list.ts';
import type { Point } from '../../tube/job.ts';
import { norm, subtract } from '../../tube/vector.ts';
import { markSd, READ_BACK_SD, tapedSd, turnSd } from '../estimate/hands.ts';
import { UNKNOWN } from '../estimate/might-be.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';
import type { CautionFact } from '../protocol/facts/index.ts';

/** Worth a word from this part of the job's tolerance of a length. */
const WORTH_WORD = 0.5;

/**
 * By how much nearer to its place the far end would come out, root mean square, if mark and turn of the bend at work and of those after it
 * were told as they really are: what is told of a bend is taken up by the bends after it, so that the last one's does not count. To
 * first order, by the motion of the far end with each of them.
 */
export function gainOfTelling(state: State): number {
	const { shape } = tubeAtWork(state, state.plan.current);
	const motion = farEndMotion(shape);
	const { start } = state;
	let [now, told] = [0, 0];
	for (const [i, { readBack, taped }] of state.bends.entries()) {
		const free = i >= state.bend - 1 && i < state.bends.length - 1;
		const angle = motionSize(motion.angles, i) * UNKNOWN;
		const turn = i === 0 ? 0 : motionSize(motion.rotations, i);
		const mark = norm(subtract(motionEnd(motion.straights, i), motionEnd(motion.straights, i + 1)));
		const off = (turned: boolean, marked: boolean) =>
			angle ** 2 +
			(turn * (turned ? READ_BACK_SD : turnSd(start))) ** 2 +
			(mark * (marked ? tapedSd(start) : markSd(start))) ** 2;
		now += off(readBack, taped);
		told += off(readBack || free, taped || free);
	}
	return Math.sqrt(now) - Math.sqrt(told);
}

const motionEnd = (motions: readonly Motion[], i: number): Point => at(motions, i).end;
const motionSize = (motions: readonly Motion[], i: number): number => norm(motionEnd(motions, i));

/** An invitation to tell real marks and turns, at the first set-up of a bend where that brings the far end nearer; none elsewhere. */
export function tellingPays(state: State): CautionFact[] {
	const { bend, bends, start } = state;
	if (bend === 1 || bend === bends.length || at(bends, bend - 1).seats > 0) return [];
	const nearer = gainOfTelling(state);
	return nearer < WORTH_WORD * start.job.tolerance.length ? [] : [{ code: 'telling-pays', nearer }];
}
