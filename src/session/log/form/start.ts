import type { Filter } from '../../../springback/filter.ts';
import type { Count, Provenance } from '../../../springback/history.ts';
import type { HeldDie } from '../../../springback/model.ts';
import type { Tally } from '../../../springback/scatter.ts';
import { isObject } from '../../../tube/as-json.ts';
import { type Anew, type DieStart, isOfAnotherModel, type Start } from '../start.ts';
import { isSharing } from './facts.ts';
import {
	type Is,
	isAnything,
	isCount,
	isEachOf,
	isFlag,
	isList,
	isNumber,
	isOf,
	isOneOf,
	isOrdinal,
	isText,
	orAbsent,
	orNull,
} from './is.ts';
import { isJob, type LoggedJob } from './job.ts';

const countFields = { sessions: isCount, pulls: isCount };
const isProvenance: Is<Provenance> = isOf({
	exact: isOf<Count>(countFields),
	near: isList(isOf<Provenance['near'][number]>({ ...countFields, shares: isSharing })),
});

const isTally: Is<Tally | undefined> = orAbsent(isOf<Tally>({ sum: isNumber, count: isNumber }));
const isHeldDie: Is<HeldDie> = isOf<HeldDie>({ name: isText, back: isNumber });

type LoggedFilter = Partial<Omit<Filter, 'scatter'>> &
	Pick<Filter, 'mean' | 'cov'> & { scatter?: Partial<Filter['scatter']> };

/** A filter of this model; what an older version of it did not have yet is as expected without it. */
const isFilter: Is<LoggedFilter> = isOf<LoggedFilter>({
	mean: isList(isNumber),
	cov: isList(isList(isNumber)),
	pulls: orAbsent(isCount),
	largest: orAbsent(isNumber),
	stopped: orAbsent(isNumber),
	held: orAbsent(isNumber),
	moved: orAbsent(isNumber),
	seen: orAbsent(isFlag),
	opened: orAbsent(isFlag),
	seated: orAbsent(isNumber),
	zero: orAbsent(orNull(isNumber)),
	first: orAbsent(isNumber),
	setting: orAbsent(isNumber),
	tallied: orAbsent(isNumber),
	right: orAbsent(isNumber),
	scatter: orAbsent(
		isOf<Partial<Filter['scatter']>>({ stop: isTally, seat: isTally, dial: isTally, finder: isTally, wrong: isTally }),
	),
	dialStep: orAbsent(isNumber),
	dies: orAbsent(isList(isHeldDie)),
});

/** What another model believed does not count here, whatever its form. */
const isBelief = ({ model, prior }: { model?: string; prior: unknown }): boolean =>
	isOfAnotherModel({ model }) ? isObject(prior) : isFilter(prior);

const anewFields = { model: isText, prior: isAnything as Is<Filter>, from: orAbsent(isProvenance) };
const hasAnewFields: Is<Anew> = isOf<Anew>(anewFields);
export const isAnew: Is<Anew> = (value): value is Anew => hasAnewFields(value) && isBelief(value);

const isGrowthSource = orAbsent(isOneOf('job', 'die', 'expected'));
const isDie: Is<DieStart> = isOf<DieStart>({
	from: orAbsent(isProvenance),
	growth: isNumber,
	growthFrom: isGrowthSource,
	growthTooMuch: orAbsent(isNumber),
});

type LoggedStart = Omit<Start, 'job'> & { job: LoggedJob };

const hasStartFields: Is<LoggedStart> = isOf<LoggedStart>({
	id: isText,
	program: isText,
	at: isText,
	job: isJob,
	jobFile: isText,
	jobSource: isAnything,
	learn: isFlag,
	simulated: orAbsent(isOf({ seed: isNumber })),
	piece: orAbsent(isOrdinal),
	heat: orAbsent(isText),
	model: orAbsent(isText),
	prior: isAnything as Is<Filter>,
	from: orAbsent(isProvenance),
	corners: orAbsent(isOneOf('held')),
	growth: isNumber,
	growthFrom: isGrowthSource,
	growthTooMuch: orAbsent(isNumber),
	dies: orAbsent(isEachOf(isDie)),
});

/** Whether a first record's start is one: `upToDate` makes it whole. */
export const isStart: Is<Start> = (value): value is Start => hasStartFields(value) && isBelief(value);
