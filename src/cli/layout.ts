import { chalkPlanes } from '../tube/chalk.ts';
import { copedEnds } from '../tube/cope.ts';
import type { BentAs, Job } from '../tube/job.ts';
import type { LayoutDocument } from '../tube/layout.ts';
import { finishedShape } from '../tube/resolve.ts';
import { marksFor } from '../words/growth.ts';
import { withText } from '../words/warnings.ts';
import { chalkText } from './chalk-text.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { laidOut } from './laid-out.ts';
import { layoutText } from './layout-text.ts';

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
	const tell = tellOn({ stderr });
	const { job, growth, document, kept, changed } = await laidOut({ file, home, as, learn }, tell);
	const planes = chalk ? chalkPlanes(finishedShape(job, growth)) : null;
	if (json) {
		if (kept !== null) tell(kept);
		printJson(
			{ stdout },
			{
				...layoutWorded(document, job),
				...(job.ends && { copes: copedEnds(job) }),
				...(planes && { chalk: planes }),
			},
		);
	} else {
		const said = [kept, marksFor(growth, job.tooling.die), changed].filter((line) => line !== null);
		print(
			{ stdout },
			planes ? chalkText(job, { planes, bends: document.bends }, said) : layoutText(job, document, said),
		);
	}
	return 0;
}

/** The document with the sentence of each warning beside it. */
function layoutWorded(document: LayoutDocument, job: Job): object {
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
