import { loadJob } from '../job/load.ts';
import { unchangedRows } from '../journal/kept-rows.ts';
import { type Beginning, beginning, growthOf } from '../session/log/start.ts';
import { jobEnds } from '../session/plan/ends.ts';
import { jobWarnings } from '../session/plan/job-warnings.ts';
import { openSettings } from '../settings/settings.ts';
import { diesOf, furtherPlace, hasSeveralDies, toolingOfDie } from '../tube/dies.ts';
import type { PlannedGrowth } from '../tube/growth.ts';
import type { BentAs, Job } from '../tube/job.ts';
import { type LayoutDocument, layout } from '../tube/layout.ts';
import { FIELD_NAMES, type FieldName } from '../tube/tooling-fields.ts';
import { asBent } from '../tube/turned-job.ts';
import { cornersHold, keptFigures } from '../words/layout/rests-on.ts';
import { settingsWords } from '../words/settings.ts';
import { lessonsFor } from './lessons-for.ts';

export interface LayoutOf {
	file: string;
	home: string;
	as: BentAs;
	learn: boolean;
}

/** A job before it is bent, and what that rests on. */
export interface LaidOut {
	job: Job;
	/** The file's real path. */
	path: string;
	/** What a session of it would begin with. */
	begin: Beginning;
	growth: PlannedGrowth;
	document: LayoutDocument;
	/** The values that the job leaves to its bender and die, as a sentence; null when there is none. */
	kept: string | null;
	/** Said of a job that meant something else before the drawing's corners held; null where it means what it did. */
	changed: string | null;
}

/**
 * A job file laid out, with what is kept of its bender and what was learned on it. `taught`: learned springback is wanted whatever decides on the growth.
 * @throws JobFileError with every fault of the file
 */
export async function laidOut(
	{ file, home, as, learn }: LayoutOf,
	tell: (sentence: string) => void,
	taught = false,
): Promise<LaidOut> {
	const settings = openSettings(home);
	for (const problem of settings.problems) tell(settingsWords(problem));
	const { job: drawn, fromBender, path } = loadJob(file, settings.tooling);
	const job = asBent(drawn, as);
	const isWanted = learn && (taught || diesOf(job).some((die) => toolingOfDie(job, die).growth === null));
	const rows = isWanted ? (unchangedRows(home) ?? (await folding()).keptForStart(home, tell)) : [];
	const lessons = isWanted ? lessonsFor(home, rows) : null;
	const before = job.quantity === 1 ? undefined : (await folding()).growthBefore(home, rows, { path, job });
	const begin = beginning({ job, fromBender }, lessons, before);
	const growth = growthOf(begin);
	const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
	return { job, path, begin, growth, document, kept: keptValues(job, fromBender), changed: cornersHoldNow(job) };
}

/** What folds logs is most of the program, and mostly no log has changed. */
const folding = () => import('./reading-logs.ts');

function keptValues(job: Job, places: readonly string[]): string | null {
	const { tooling, units } = job;
	const told = (die: string, placed: (name: FieldName) => string): string[] => {
		const of = toolingOfDie(job, die);
		const values = FIELD_NAMES.filter((name) => places.includes(placed(name)));
		if (values.length === 0) return [];
		return [
			keptFigures(
				tooling.bender,
				die,
				values.map((name) => [name, of[name]] as const),
				units,
			),
		];
	};
	const further = Object.keys(tooling.dies ?? {});
	const each = [
		...told(tooling.die, (name) => `tooling.${name}`),
		...further.flatMap((die) => told(die, (name) => furtherPlace(die, name))),
	];
	return each.length === 0 ? null : each.join(' ');
}

function cornersHoldNow(job: Job): string | null {
	const { shape, units, tooling } = job;
	// Jobs of several dies are younger than the change.
	if (shape.kind === 'points' || tooling.growth === null || tooling.growth === 1 || hasSeveralDies(job)) return null;
	return cornersHold(shape.radius ?? tooling.clr, units);
}
