import { newTube } from '../../springback/filter.ts';
import { atDie } from '../../springback/several-dies.ts';
import { predictStop } from '../../springback/stop.ts';
import { dieOf } from '../../tube/dies.ts';
import type { PlannedGrowth } from '../../tube/growth.ts';
import type { Job } from '../../tube/job.ts';
import { finishedShape } from '../../tube/resolve.ts';
import type { Shape } from '../../tube/shape.ts';
import type { Warning } from '../../tube/warnings.ts';
import { warnings } from '../../tube/warnings.ts';
import { coldPrior, growthOf } from '../log/start.ts';
import type { State } from '../log/state.ts';

/** What cannot be bent, or only badly, said before the first cut. The dial limit is held against the stop expected under load. */
export function jobWarnings(job: Job, growth: PlannedGrowth, shape: Shape = finishedShape(job, growth)): Warning[] {
	const filter = newTube(coldPrior(job).prior);
	return warnings(job, shape, growth, (angle, bend) => predictStop(atDie(filter, dieOf(job, bend)), angle));
}

/** The same of a session, as it was laid out when it began. */
export function sessionWarnings({ start, design }: Pick<State, 'start' | 'design'>): Warning[] {
	return jobWarnings(start.job, growthOf(start), design.shape);
}
