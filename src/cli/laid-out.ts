import { loadBendable } from '../job/load.ts';
import { type Beginning, beginning, growthOf } from '../session/log/start.ts';
import { jobEnds } from '../session/plan/ends.ts';
import { jobWarnings } from '../session/plan/job-warnings.ts';
import { openSettings } from '../settings/settings.ts';
import type { Lesson } from '../springback/history.ts';
import type { PlannedGrowth } from '../tube/growth.ts';
import type { BentAs, Job } from '../tube/job.ts';
import { type LayoutDocument, layout } from '../tube/layout.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { asBent } from '../tube/turned-job.ts';
import { formatQuantity } from '../units/format.ts';
import { foreignName } from '../words/foreign.ts';
import { keptForStart, lessonsFor } from './kept.ts';

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
export function laidOut(
	{ file, home, as, learn }: LayoutOf,
	tell: (sentence: string) => void,
	taught = false,
): LaidOut {
	const settings = openSettings(home);
	for (const problem of settings.problems) tell(problem);
	const { job: drawn, fromBender, path } = loadBendable(file, settings.tooling);
	const job = asBent(drawn, as);
	const isWanted = learn && (taught || job.tooling.growth === null);
	const begin = beginning({ job, fromBender }, isWanted ? lessonsOf(home, tell) : null);
	const growth = growthOf(begin);
	const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
	return { job, path, begin, growth, document, kept: keptValues(job, fromBender), changed: changed(job) };
}

const lessonsOf = (home: string, tell: (sentence: string) => void): readonly Lesson[] =>
	lessonsFor(home, keptForStart(home, tell));

function keptValues({ tooling, units }: Job, places: readonly string[]): string | null {
	if (places.length === 0) return null;
	const names = places.map((place) => place.replace('tooling.', '') as FieldName);
	const values = names.map((name) => {
		const value = tooling[name];
		return `${name} ${value === null ? 'not known' : formatQuantity(value, TOOLING_FIELDS[name].kind, units)}`;
	});
	return `As kept for bender "${foreignName(tooling.bender)}" and die "${foreignName(tooling.die)}": ${values.join(', ')}.`;
}

function changed({ shape, units, tooling: { growth, clr } }: Job): string | null {
	if (shape.kind === 'points' || growth === null || growth === 1) return null;
	const drawn = formatQuantity(shape.radius ?? clr, 'length', units);
	return `Changed: a job with growth and bends is read in a new way. The straights in the file are for bends of radius ${drawn}. The corners hold; straights and marks give way. It used to be the other way about.`;
}
