import { loadBendable } from '../job/load.ts';
import { coldPrior } from '../session/log/start.ts';
import { jobEnds } from '../session/plan/ends.ts';
import { jobWarnings } from '../session/plan/job-warnings.ts';
import { openSettings } from '../settings/settings.ts';
import type { BentAs, Job } from '../tube/job.ts';
import { type LayoutDocument, layout } from '../tube/layout.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { asBent } from '../tube/turned-job.ts';
import { formatQuantity } from '../units/format.ts';
import { foreignName } from '../words/foreign.ts';
import { withText } from '../words/warnings.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
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

/** What a session will expect of the radius where nobody has measured it; null where the job says it. */
function expectedGrowth(job: Job): string | null {
	if (job.tooling.growth !== null) return null;
	const percent = ((coldPrior(job).growth - 1) * 100).toFixed(1);
	return `These are the marks for the die's radius. The bend should come out ${percent} % larger: pullbook bend moves the marks for that where a tape shows it.`;
}

/**
 * `pullbook layout`: marks, turns, checks and warnings of a job before it is bent, as a page for the bench or one JSON document. Values that
 * come from a kept bender are named, on standard error with `--json`. Exit code 0, warnings or not.
 * @throws JobFileError with every fault of the file
 */
export async function runLayout(
	{ file, json, home, as }: { file: string; json: boolean; home: string; as: BentAs },
	{ stdout, stderr }: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const settings = openSettings(home);
	const tell = tellOn({ stderr });
	for (const problem of settings.problems) tell(problem);
	const { job: drawn, fromBender } = loadBendable(file, settings.tooling);
	const job = asBent(drawn, as);
	const document = layout(job, jobWarnings(job), jobEnds(job));
	const kept = keptValues(job, fromBender);
	if (json) {
		if (kept !== null) tell(kept);
		printJson({ stdout }, worded(document, job));
	} else
		print(
			{ stdout },
			layoutText(job, document, [kept, expectedGrowth(job)].filter((line) => line !== null).join(' ') || null),
		);
	return 0;
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
