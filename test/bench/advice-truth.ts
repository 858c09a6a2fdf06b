/** Whether a tube that was bent truly fits, its ends cut as the program says. */
import type { Station } from '../../src/practice/station.ts';
import { trueShape } from '../../src/practice/true-tube.ts';
import { tubeAtWork } from '../../src/session/estimate/tube-at-work.ts';
import type { State } from '../../src/session/log/state.ts';
import { corners } from '../../src/tube/frames.ts';
import type { Job } from '../../src/tube/job.ts';
import { distance } from '../../src/tube/vector.ts';
import { checkMisses, directionMiss } from './fit-figures.ts';
import { trimmed } from './fit-made.ts';

/** As the line mode's page has it; a tube that was given up does not. `job`: as the tube truly stretches. */
export function trulyFits(state: State, station: Station, job: Job): boolean {
	if (state.phase.at !== 'done' || state.phase.scrapped !== null) return false;
	const { trimStart, trimEnd } = tubeAtWork(state, state.plan.current);
	const lies = trueShape(station.trueBends, station.piece, job);
	const truth = trimmed(lies, { start: trimStart, end: Math.max(0, trimEnd) }, state);
	const { shape, direction } = state.start.job.tolerance;
	const drawn = corners(state.design.shape);
	return (
		corners(truth).every((corner, i) => i === 0 || distance(corner, drawn[i]!) <= shape) &&
		directionMiss(truth, state) <= direction &&
		checkMisses(truth, state).every(({ miss, tolerance }) => miss <= tolerance)
	);
}
