import { loadBendable } from '../job/load.ts';
import { beginning, growthOf } from '../session/log/start.ts';
import { jobEnds } from '../session/plan/ends.ts';
import { jobWarnings } from '../session/plan/job-warnings.ts';
import { openSettings } from '../settings/settings.ts';
import type { Lesson } from '../springback/history.ts';
import { chalkPlanes } from '../tube/chalk.ts';
import { copedEnds } from '../tube/cope.ts';
import type { BentAs, Job } from '../tube/job.ts';
import { type LayoutDocument, layout } from '../tube/layout.ts';
import { finishedShape } from '../tube/resolve.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { asBent } from '../tube/turned-job.ts';
import { formatQuantity } from '../units/format.ts';
import { foreignName } from '../words/foreign.ts';
import { marksFor } from '../words/growth.ts';
import { withText } from '../words/warnings.ts';
import { chalkText } from './chalk-text.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { keptForStart, lessonsFor } from './kept.ts';
import { layoutText } from './layout-text.ts';

/** The values that the job leaves to its bender and die, as a sentence; null when there is none. */
function keptValues({ tooling, units }: Job, places: readonly string[]): string | null {
	if (places.length === 0) return null;
	const names = places.map((place) => place.replace('tooling.', '') as FieldName);
	const values = names.map((name) => {
		const value = tooling[name];
		return `${name} ${value === null ? 'not known' : formatQuantity(value, TOOLING_FIELDS[name].kind, units)}`;
	});
	return `As kept for bender "${foreignName(tooling.bender)}" and die "${foreignName(tooling.die)}": ${values.join(', ')}.`;
}

/** Said of a job that meant something else before the drawing's corners held; null where it means what it did. */
function changed({ shape, units, tooling: { growth, clr } }: Job): string | null {
	if (shape.kind === 'points' || growth === null || growth === 1) return null;
	const drawn = formatQuantity(shape.radius ?? clr, 'length', units);
	return `Changed: a job with growth and bends is read in a new way. The straights in the file are for bends of radius ${drawn}. The corners hold; straights and marks give way. It used to be the other way about.`;
}

export interface LayoutRequest {
	file: string;
	json: boolean;
	/** What to chalk on the bench, in place of the page; with `json` as a further field. */
	chalk?: boolean;
	home: string;
	as: BentAs;
	learn: boolean;
}

/**
 * `pullbook layout`: marks, turns, checks and warnings of a job before it is bent, as a page for the bench or one JSON document. Values that
 * come from a kept bender are named, on standard error with `--json`. Exit code 0, warnings or not.
 * @throws JobFileError with every fault of the file
 */
export async function runLayout(
	{ file, json, chalk = false, home, as, learn }: LayoutRequest,
	{ stdout, stderr }: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const settings = openSettings(home);
	const tell = tellOn({ stderr });
	for (const problem of settings.problems) tell(problem);
	const { job: drawn, fromBender } = loadBendable(file, settings.tooling);
	const job = asBent(drawn, as);
	const growth = growthOf(beginning({ job, fromBender }, lessonsWanted(job, { home, learn }, tell)));
	const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
	const kept = keptValues(job, fromBender);
	const planes = chalk ? chalkPlanes(finishedShape(job, growth.value)) : null;
	if (json) {
		if (kept !== null) tell(kept);
		printJson(
			{ stdout },
			{
				...worded(document, job),
				...(job.ends && { copes: copedEnds(job) }),
				...(planes && { chalk: planes }),
			},
		);
	} else {
		const said = [kept, marksFor(growth), changed(job)].filter((line) => line !== null);
		print(
			{ stdout },
			planes
				? chalkText(job, { planes, radius: job.tooling.clr * growth.value }, said)
				: layoutText(job, document, said),
		);
	}
	return 0;
}

/** What was taught, where that decides on the growth; null: by mechanics alone. */
function lessonsWanted(
	{ tooling }: Job,
	{ home, learn }: { home: string; learn: boolean },
	tell: (sentence: string) => void,
): readonly Lesson[] | null {
	if (!learn || tooling.growth !== null) return null;
	return lessonsFor(home, keptForStart(home, tell));
}

/** The document with the sentence of each warning beside it. */
function worded(document: LayoutDocument, job: Job): object {
	const { ends, warnings } = document;
	const told = (end: LayoutDocument['ends']['start']) => ({
		...end,
		hindrances: end.hindrances.map((warning) => withText(warning, job)),
	});
	return {
		...document,
		warnings: warnings.map((warning) => withText(warning, job)),
		ends: { ...ends, start: told(ends.start), far: told(ends.far) },
	};
}
