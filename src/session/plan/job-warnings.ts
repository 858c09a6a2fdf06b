import { newTube } from '../../springback/filter.ts';
import { predictStop } from '../../springback/stop.ts';
import type { Job } from '../../tube/job.ts';
import { designGrowth, resolveShape } from '../../tube/resolve.ts';
import type { Warning } from '../../tube/warnings.ts';
import { warnings } from '../../tube/warnings.ts';
import { coldPrior } from '../log/start.ts';

/** What cannot be bent, or only badly, said before the first cut. The dial limit is held against the stop expected under load. */
export function jobWarnings(job: Job): Warning[] {
	const filter = newTube(coldPrior(job).prior);
	return warnings(job, resolveShape(job, designGrowth(job)), (angle) => predictStop(filter, angle));
}
