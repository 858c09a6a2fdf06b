import type { Filter } from '../springback/filter.ts';
import { filterPrior } from '../springback/filter.ts';
import { mechanicsPrior } from '../springback/mechanics.ts';
import type { Job } from '../tube/job.ts';

/** All that the fold starts from: the first record of a log. A session reads nothing else when it is resumed. */
export interface Start {
	id: string;
	/** Version of the program that began the session. */
	program: string;
	/** ISO time. */
	at: string;
	job: Job;
	/** Real path of the job file, and its text as parsed, to see later whether it was changed. */
	jobFile: string;
	jobSource: unknown;
	/** Whether other sessions may teach this one, and it them. */
	learn: boolean;
	/** Springback as believed before the first pull. */
	prior: Filter;
	/** Finished centre-line radius over the die's, as expected before the first pull. */
	growth: number;
}

/** What mechanics alone lets one expect of a job that nothing has been learned for: the filter's prior and the radius growth. */
export function coldPrior(job: Job): { prior: Filter; growth: number } {
	const mechanics = mechanicsPrior(job.tube, job.tooling.clr, job.tube.material);
	return { prior: filterPrior(mechanics.k), growth: job.tooling.growth ?? mechanics.growth };
}
