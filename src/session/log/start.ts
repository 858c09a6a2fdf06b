import type { Filter } from '../../springback/filter.ts';
import { filterPrior, growthExpected } from '../../springback/filter.ts';
import type { Lesson, Provenance } from '../../springback/history.ts';
import { learned } from '../../springback/history.ts';
import { mechanicsPrior } from '../../springback/mechanics.ts';
import { modelName } from '../../springback/model-name.ts';
import { type GrowthSource, type PlannedGrowth, plannedGrowth } from '../../tube/growth.ts';
import type { Job } from '../../tube/job.ts';
import { wholeJob } from '../../tube/whole-job.ts';
import { kinOf } from '../estimate/kin-of-job.ts';

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
	/** The model that `prior` is of; absent in logs older than names. */
	model?: string;
	/** Springback as believed before the first pull. */
	prior: Filter;
	/** What that belief rests on; absent where it was not to learn, and in logs older than learning. */
	from?: Provenance;
	/** The drawing's corners hold whatever the radius; absent in logs begun before they did, where straights given with bends held. */
	corners?: 'held';
	/** Finished centre-line radius over the die's, as planned before the first pull, and where that is from (with `corners` alone). */
	growth: number;
	growthFrom?: GrowthSource;
	/** The growth that was expected, where it leaves no room between corners. */
	growthTooMuch?: number;
}

/** What a session begins with besides its job: what is believed of springback, and the growth that it is laid out with. */
export type Beginning = Pick<Start, 'model' | 'prior' | 'from' | 'corners' | 'growth' | 'growthFrom' | 'growthTooMuch'>;

/** Where the growth that a job states is from. */
type Stated = 'job' | 'die';

/** What mechanics alone lets one expect of a job that nothing has been learned for. */
export function coldPrior(job: Job, stated: Stated = 'job'): Beginning {
	const mechanics = mechanicsPrior(job.tube, job.tooling.clr, job.tube.material);
	const prior = filterPrior(mechanics.k, job.tooling.dialStep);
	return { model: modelName(), prior, ...laidOutWith(plannedGrowth(job, stated, mechanics.growth)) };
}

/** As coldPrior, with what earlier sessions taught; `from` says which. */
export function learnedPrior(job: Job, lessons: readonly Lesson[], stated: Stated = 'job'): Beginning {
	const cold = coldPrior(job, stated);
	const { prior, from } = learned(kinOf(job), cold.prior, lessons);
	if (from.exact.sessions === 0) return { ...cold, prior, from };
	return { model: modelName(), prior, from, ...laidOutWith(plannedGrowth(job, stated, growthExpected(prior))) };
}

function laidOutWith({ value, from, tooMuch }: PlannedGrowth) {
	const room = tooMuch === undefined ? {} : { growthTooMuch: tooMuch };
	return { corners: 'held', growth: value, growthFrom: from, ...room } as const;
}

/** What a session, or a layout, of a job as loaded begins with: by what these lessons taught, or (null) by mechanics alone. */
export function beginning(
	{ job, fromBender = [] }: { job: Job; fromBender?: readonly string[] },
	lessons: readonly Lesson[] | null,
): Beginning {
	const stated = fromBender.includes('tooling.growth') ? 'die' : 'job';
	return lessons === null ? coldPrior(job, stated) : learnedPrior(job, lessons, stated);
}

/** The growth that a session, or a layout, is laid out with. */
export function growthOf({ growth, growthFrom = 'expected', growthTooMuch }: Omit<Beginning, 'prior'>): PlannedGrowth {
	return { value: growth, from: growthFrom, ...(growthTooMuch === undefined ? {} : { tooMuch: growthTooMuch }) };
}

/** What is expected before the first pull in place of a prior of another model. */
export type Anew = Pick<Start, 'prior' | 'from'> & { model: string };

/** What this model expects of a session begun with another: what the sessions before it teach, where it was to learn. */
export function reckonedAnew({ job, learn }: Start, lessons: readonly Lesson[]): Anew {
	const { prior } = coldPrior(job);
	return { model: modelName(), ...(learn && lessons.length > 0 ? learned(kinOf(job), prior, lessons) : { prior }) };
}

/** Whether a start's prior is of another model than this version's. */
export function isOfAnotherModel({ model }: Pick<Start, 'model'>): boolean {
	return model !== modelName();
}

/**
 * A start as this version reckons with it. What an older version's job does not say is as when it is left out. A prior of another model
 * says nothing here: `anew` is in its place, where the log holds what was learned anew by this model, else what is expected without any
 * history.
 */
export function upToDate(kept: Start, anew: Anew | null = null): Start {
	const start = { ...kept, job: wholeJob(kept.job) };
	if (isOfAnotherModel(start)) {
		const { from: _, ...rest } = start;
		return { ...rest, ...(anew ?? reckonedAnew(start, [])) };
	}
	const cold = coldPrior(start.job).prior;
	return { ...start, prior: { ...cold, ...start.prior, scatter: { ...cold.scatter, ...start.prior.scatter } } };
}
