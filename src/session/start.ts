import type { Filter } from '../springback/filter.ts';
import { filterPrior } from '../springback/filter.ts';
import type { Lesson, Provenance } from '../springback/history.ts';
import { learned } from '../springback/history.ts';
import { mechanicsPrior } from '../springback/mechanics.ts';
import type { Job } from '../tube/job.ts';
import { kinOf } from './lesson.ts';

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
	/** What that belief rests on; absent where it was not to learn, and in logs older than learning. */
	from?: Provenance;
	/** Finished centre-line radius over the die's, as expected before the first pull. */
	growth: number;
}

/** What mechanics alone lets one expect of a job that nothing has been learned for: the filter's prior and the radius growth. */
export function coldPrior(job: Job): { prior: Filter; growth: number } {
	const mechanics = mechanicsPrior(job.tube, job.tooling.clr, job.tube.material);
	return { prior: filterPrior(mechanics.k, job.tooling.dialStep), growth: job.tooling.growth ?? mechanics.growth };
}

/** As coldPrior, with what earlier sessions taught; `from` says which. */
export function learnedPrior(job: Job, lessons: readonly Lesson[]): Pick<Start, 'prior' | 'growth' | 'from'> {
	const cold = coldPrior(job);
	return { ...cold, ...learned(kinOf(job), cold.prior, lessons) };
}

/**
 * A start as this version reckons with it. What an older version's prior does not have yet is as before any reading; a prior of other
 * unknowns says nothing about these, so that its session goes on as one without history.
 */
export function upToDate(start: Start): Start {
	const cold = coldPrior(start.job).prior;
	const isKin = start.prior.mean.length === cold.mean.length;
	const scatter = { ...cold.scatter, ...start.prior.scatter };
	return { ...start, prior: isKin ? { ...cold, ...start.prior, scatter } : cold };
}
