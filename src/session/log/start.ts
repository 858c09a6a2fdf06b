import type { Filter } from '../../springback/filter.ts';
import { growthExpected } from '../../springback/filter.ts';
import type { Lesson, Provenance } from '../../springback/history.ts';
import { learned } from '../../springback/history.ts';
import { mechanicsPrior } from '../../springback/mechanics.ts';
import { modelName } from '../../springback/model-name.ts';
import { atDie, priorOn } from '../../springback/several-dies.ts';
import { dieOf, diesOf, filePlaceOf, toolingOfDie } from '../../tube/dies.ts';
import { type GrowthSource, type PlannedDieGrowth, type PlannedGrowth, plannedGrowth } from '../../tube/growth.ts';
import type { Job } from '../../tube/job.ts';
import { wholeJob } from '../../tube/whole-job.ts';
import { kinsOfJob } from '../estimate/kin-of-job.ts';

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
	/** The seed of the simulated bender that it was played on; absent where a tube was bent. */
	simulated?: { seed: number };
	/** Which of the pieces of its job it is, counted from 1; absent where one is wanted and it was not begun as another of the same. */
	piece?: number;
	/** The heat that the piece before was told to be of, where it is not the job's. */
	heat?: string;
	/** The model that `prior` is of; absent in logs older than names. */
	model?: string;
	/** Springback as believed before the first pull. */
	prior: Filter;
	/** What that belief rests on; absent where it was not to learn, and in logs older than learning. */
	from?: Provenance;
	/** The drawing's corners hold whatever the radius; absent in logs begun before they did, where straights given with bends held. */
	corners?: 'held';
	/** Finished center-line radius over the die's, as planned before the first pull, and where that is from (with `corners` alone). */
	growth: number;
	growthFrom?: GrowthSource;
	/** The growth that was expected, where it leaves no room between corners. */
	growthTooMuch?: number;
	/** The same of every further die that bends name, by its name; absent where there is none. */
	dies?: Readonly<Record<string, DieStart>>;
}

/** What is begun with of one die: its growth, where that is from, and what is known of its springback. */
export type DieStart = Pick<Start, 'from' | 'growth' | 'growthFrom' | 'growthTooMuch'>;

/**
 * What a session, or a layout, of a job begins with: what is believed of springback, and the growth that it is laid out with. Without the
 * model's name, which takes longer to find than all of this; only a log wants it.
 */
export type Beginning = Pick<Start, 'prior' | 'from' | 'corners' | 'growth' | 'growthFrom' | 'growthTooMuch' | 'dies'>;

/** Where the growth that a job states of a die is from. */
type Stated = (die: string) => 'job' | 'die';
const BY_JOB: Stated = () => 'job';

/** What mechanics alone lets one expect of a job that nothing has been learned for. */
export function coldPrior(job: Job, stated: Stated = BY_JOB): Beginning {
	const prior = priorOn(kinsOfJob(job), job.tooling.dialStep);
	const expected = (die: string) => mechanicsGrowth(job, die);
	return { prior, ...laidOutWith(plannedGrowth(job, stated, expected)) };
}

export const mechanicsGrowth = (job: Job, die: string): number =>
	mechanicsPrior(job.tube, toolingOfDie(job, die).clr, job.tube.material).growth;

/** As coldPrior, with what earlier sessions taught; `from` says which. */
export function learnedPrior(job: Job, lessons: readonly Lesson[], stated: Stated = BY_JOB): Beginning {
	const [own, ...others] = kinsOfJob(job);
	const { prior, from, besides = [] } = learned(own!, coldPrior(job, stated).prior, lessons, others);
	const told = new Map(diesOf(job).map((die, i) => [die, i === 0 ? from : besides[i - 1]!]));
	const expected = (die: string) => expectedGrowth(job, die, prior, told.get(die));
	return { prior, from, ...laidOutWith(plannedGrowth(job, stated, expected), told) };
}

/** As this die and tube have shown, else as mechanics has it. */
const expectedGrowth = (job: Job, die: string, prior: Filter, from: Provenance | undefined): number =>
	from === undefined || from.exact.sessions === 0 ? mechanicsGrowth(job, die) : growthExpected(atDie(prior, die));

function laidOutWith(growth: PlannedGrowth, told?: ReadonlyMap<string, Provenance>) {
	const further = Object.entries(growth.dies ?? {}).map(([die, each]): [string, DieStart] => {
		const from = told?.get(die);
		return [die, { ...dieStart(each), ...(from && { from }) }];
	});
	const dies = further.length === 0 ? {} : { dies: Object.fromEntries(further) };
	return { corners: 'held', ...dieStart(growth), ...dies } as const;
}

function dieStart({ value, from, tooMuch }: PlannedDieGrowth): DieStart {
	return { growth: value, growthFrom: from, ...(tooMuch === undefined ? {} : { growthTooMuch: tooMuch }) };
}

/**
 * What a session, or a layout, of a job as loaded begins with: by what these lessons taught, or (null) by mechanics alone. `before`: the growth
 * that the piece before was laid out with. It holds whatever was learned since: pieces of one batch are cut and marked alike.
 */
export function beginning(
	{ job, fromBender = [] }: { job: Job; fromBender?: readonly string[] },
	lessons: readonly Lesson[] | null,
	before?: PlannedGrowth,
): Beginning {
	const stated: Stated = (die) => (fromBender.includes(filePlaceOf(job, die, 'growth')) ? 'die' : 'job');
	const now = lessons === null ? coldPrior(job, stated) : learnedPrior(job, lessons, stated);
	return before === undefined ? now : withGrowthOf(before, now);
}

/** A beginning with another growth of each die of which it is only expected. */
function withGrowthOf({ dies, ...own }: PlannedGrowth, now: Beginning): Beginning {
	const laid = <T extends DieStart>(start: T, before: PlannedDieGrowth | undefined): T => {
		if (start.growthFrom !== 'expected' || before?.from !== 'expected') return start;
		const { growthTooMuch: _, ...rest } = start;
		return { ...(rest as T), ...dieStart(before) };
	};
	const further = Object.entries(now.dies ?? {}).map(([die, start]) => [die, laid(start, dies?.[die])]);
	return { ...laid(now, own), ...(now.dies && { dies: Object.fromEntries(further) }) };
}

/** The growth that it would be laid out with by what is believed as it begins, if nothing held those of the piece before. */
export function growthShown({ job, prior, from, ...begun }: Pick<Start, 'job'> & Beginning): PlannedGrowth {
	const told = (die: string) => (die === job.tooling.die ? { ...begun, from } : begun.dies?.[die]);
	const stated: Stated = (die) => (told(die)?.growthFrom === 'die' ? 'die' : 'job');
	return plannedGrowth(job, stated, (die) => expectedGrowth(job, die, prior, told(die)?.from));
}

/** The growth that a session, or a layout, is laid out with. */
export function growthOf({ dies, ...own }: Omit<Beginning, 'prior'>): PlannedGrowth {
	if (dies === undefined) return growthOn(own);
	const each = Object.entries(dies).map(([die, start]) => [die, growthOn(start)]);
	return { ...growthOn(own), dies: Object.fromEntries(each) };
}

function growthOn({ growth, growthFrom = 'expected', growthTooMuch }: DieStart): PlannedDieGrowth {
	return { value: growth, from: growthFrom, ...(growthTooMuch === undefined ? {} : { tooMuch: growthTooMuch }) };
}

/** What is known of a bend's springback from earlier sessions; absent where it was not to learn. */
export function knownOf({ job, from, dies }: Start, bend: number): Provenance | undefined {
	const die = dieOf(job, bend);
	return die === job.tooling.die ? from : dies?.[die]?.from;
}

/** What is expected before the first pull in place of a prior of another model. */
export type Anew = Pick<Start, 'prior' | 'from'> & { model: string };

/** What this model expects of a session begun with another: what the sessions before it teach, where it was to learn. */
export function reckonedAnew({ job, learn }: Start, lessons: readonly Lesson[]): Anew {
	const { prior } = coldPrior(job);
	if (!learn || lessons.length === 0) return { model: modelName(), prior };
	const [own, ...others] = kinsOfJob(job);
	const { prior: taught, from } = learned(own!, prior, lessons, others);
	return { model: modelName(), prior: taught, from };
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
