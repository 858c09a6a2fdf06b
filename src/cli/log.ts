import { realFs } from '../files/fs-port.ts';
import { type ReadSession, readAnyway } from '../journal/catalogue.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import { following, readBack } from '../session/log/read-back.ts';
import { type SessionView, sessionView } from '../session/report/views.ts';
import { folded } from '../terminal/folded.ts';
import { journalWords } from '../words/journal.ts';
import { sessionDocument } from '../words/session-document.ts';
import { reviewText } from '../words/session-story.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { runList } from './log-list.ts';
import type { LogRequest } from './log-options.ts';
import { meantSession } from './meant-session.ts';
import { WIDTH } from './page-lines.ts';
import { shownReading } from './reading-logs.ts';
import { wallClock } from './wall-clock.ts';

/**
 * Lists the kept sessions, shows one, lays two side by side, or shows a trend. Exit code 0; 6 where a log is damaged: what can be read is shown
 * all the same; 2 where there is nothing to show.
 */
export async function runLog(request: LogRequest, io: Io): Promise<number> {
	const { id, other = null, json, csv = false, trend, wanted = null, home, rescue = null } = request;
	const form = json ? 'json' : csv ? 'csv' : 'text';
	const from = { home, rescue };
	if (trend === undefined && id !== null)
		return other === null ? showSession(id, form, from, io) : compare(id, other, json, from, io);
	const { rows } = new SessionCache(home, realFs, rescue).read(shownReading(io));
	if (trend === undefined) return runList(rows, { wanted, form }, io);
	return (await import('./log-trend.ts')).runTrend({ name: trend, json, home }, rows, io);
}

/** Where sessions are looked for: in the home, and in a folder in which some went on. */
interface KeptIn {
	home: string;
	rescue: string | null;
}

/** What is wrong with it is said. */
function readSaying(name: string, { home, rescue }: KeptIn, io: Io): ReadSession {
	const kept = readAnyway(home, meantSession(home, name, rescue), realFs, rescue);
	if (kept.problem !== null) tellOn(io)(journalWords(kept.problem));
	return kept;
}

const viewRead = ({ records }: ReadSession): SessionView => following(() => sessionView(readBack(records)));

async function compare(name: string, other: string, json: boolean, from: KeptIn, io: Io): Promise<number> {
	const both = [readSaying(name, from, io), readSaying(other, from, io)] as const;
	const isDamaged = both.some(({ damage }) => damage !== null);
	if (both.some(({ records }) => records.length === 0)) return isDamaged ? EXIT.damaged : EXIT.badInput;
	const { runCompare } = await import('./log-compare.ts');
	return runCompare(viewRead(both[0]), viewRead(both[1]), json, io) || (isDamaged ? EXIT.damaged : 0);
}

async function showSession(name: string, form: 'text' | 'json' | 'csv', from: KeptIn, io: Io): Promise<number> {
	const kept = readSaying(name, from, io);
	const isDamaged = kept.damage !== null;
	if (kept.records.length === 0) return isDamaged ? EXIT.damaged : EXIT.badInput;
	if (form === 'json')
		printJson(
			io,
			following(() => sessionDocument(viewRead(kept))),
		);
	else if (form === 'csv') {
		const [{ csvText }, { PULL_COLUMNS, pullRows }] = await Promise.all([
			import('./csv.ts'),
			import('../review/csv-pulls.ts'),
		]);
		io.stdout.write(following(() => csvText(PULL_COLUMNS, pullRows(viewRead(kept)))));
	} else
		print(
			io,
			foldedPage(
				following(() => reviewText(kept, wallClock)),
				pageWidth(io.stdout),
			),
		);
	return isDamaged ? EXIT.damaged : 0;
}

function pageWidth({ isTTY, columns }: Io['stdout']): number {
	// A pseudo-terminal may say that it has 0 columns: nobody knows then.
	return isTTY && columns > 0 ? columns : WIDTH;
}

function foldedPage(text: string, columns: number): string {
	return text
		.split('\n')
		.flatMap((line) => folded(line, columns))
		.join('\n');
}
