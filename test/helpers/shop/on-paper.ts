import type { JobOnPaper } from '../../../src/paper/job-on-paper.ts';
import { coldPrior, growthOf } from '../../../src/session/log/start.ts';
import { jobEnds } from '../../../src/session/plan/ends.ts';
import { firstStops } from '../../../src/session/plan/first-stops.ts';
import { jobWarnings } from '../../../src/session/plan/job-warnings.ts';
import type { Job } from '../../../src/tube/job.ts';
import { layout } from '../../../src/tube/layout.ts';
import { finishedShape } from '../../../src/tube/resolve.ts';

/** A job as it goes to paper, nothing learned. */
export function onPaper(job: Job): JobOnPaper {
	const begin = coldPrior(job);
	const growth = growthOf(begin);
	const shape = finishedShape(job, growth);
	const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
	return { job, document, shape, ...firstStops(job, shape, begin), said: [], foot: 'printed by a test' };
}
