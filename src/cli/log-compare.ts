import { type ComparedSession, compared } from '../review/compare.ts';
import type { SessionView } from '../session/report/views.ts';
import { table } from '../terminal/table.ts';
import { changedWords, compareTables, twoJobsWords, twoSessionsOf } from '../words/compare.ts';
import { type Io, print, printJson } from './io.ts';
import { pageLines } from './page-lines.ts';
import { UsageError } from './usage-error.ts';
import { wallClock } from './wall-clock.ts';

/**
 * `pullbook log ID ID`: two sessions of one job side by side, the older one first.
 * @throws UsageError where they are of two jobs
 */
export function runCompare(a: SessionView, b: SessionView, json: boolean, io: Io): number {
	const comparison = compared(a, b);
	if (comparison === null) throw new UsageError(twoJobsWords(a, b));
	if (json) {
		const { sessions, changed } = comparison;
		printJson(io, { job: a.job.name, sessions: sessions.map(document), changed });
		return 0;
	}
	const changed = changedWords(comparison);
	// One table for the columns to stand under each other.
	const tables = compareTables(comparison, wallClock);
	const lines = table(tables.flat(), [0, 1, 2]);
	const blocks = tables.map(({ length }, i) => {
		const from = tables.slice(0, i).flat().length;
		return lines.slice(from, from + length).join('\n');
	});
	const head = [twoSessionsOf(a.job.name), ...(changed === null ? [] : pageLines(changed))];
	print(io, [head.join('\n'), ...blocks].join('\n\n'));
	return 0;
}

/** The document of `--json`: what `log ID --json` has too, and of each bend what is compared. */
function document({ view, bends }: ComparedSession): object {
	const { id, job, status, started, ended, checks, asBuilt, heat, simulated } = view;
	const { units, tooling } = job;
	const head = { id, status, started, ended, units, bender: tooling.bender, die: tooling.die };
	const { endOffset, endAngle, chance, fits } = asBuilt;
	const told = { ...(heat !== undefined && { heat }), ...(simulated && { simulated }) };
	return { ...head, ...told, bends, checks, endOffset, endAngle, chance, fits };
}
