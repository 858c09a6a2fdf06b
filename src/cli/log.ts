import { sessionsNamed } from '../journal/by-name.ts';
import { readAnyway } from '../journal/catalogue.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import { following, readBack } from '../session/log/read-back.ts';
import { sessionView } from '../session/report/views.ts';
import { folded } from '../terminal/folded.ts';
import { journalWords } from '../words/journal.ts';
import { sessionDocument } from '../words/session-document.ts';
import { listText, severalWords } from '../words/session-list.ts';
import { reviewText } from '../words/session-story.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { shownReading, tellProblems } from './kept.ts';
import { WIDTH } from './page.ts';
import { UsageError } from './usage-error.ts';
import { wallClock } from './wall-clock.ts';

/**
 * Lists the kept sessions, or shows one. Exit code 0; 6 where a log is damaged: what can be read is shown all the same; 2 where there is
 * nothing to show.
 */
export async function runLog(
	{ id, json, home }: { id: string | null; json: boolean; home: string },
	io: Io,
): Promise<number> {
	return id === null ? list(json, home, io) : show(id, json, home, io);
}

function list(json: boolean, home: string, io: Io): number {
	const { rows } = new SessionCache(home).read(shownReading(io));
	if (json) {
		const summaries = rows.flatMap(({ summary, isImported }) => {
			return summary === null ? [] : [{ ...summary, ...(isImported && { imported: true }) }];
		});
		printJson(io, summaries);
		tellProblems(rows, tellOn(io));
	} else print(io, listText(rows));
	return rows.some(({ isDamaged }) => isDamaged) ? EXIT.damaged : 0;
}

/** The one session that is meant. @throws UsageError where it may be several: it says which */
function meant(home: string, name: string): string {
	const ids = sessionsNamed(home, name);
	if (ids.length > 1) throw new UsageError(severalWords(name, ids));
	return ids[0] ?? name;
}

function show(name: string, json: boolean, home: string, io: Io): number {
	const kept = readAnyway(home, meant(home, name));
	const isDamaged = kept.damage !== null;
	if (kept.problem !== null) tellOn(io)(journalWords(kept.problem));
	if (kept.records.length === 0) return isDamaged ? EXIT.damaged : EXIT.badInput;
	if (json)
		printJson(
			io,
			following(() => sessionDocument(sessionView(readBack(kept.records)))),
		);
	else
		print(
			io,
			page(
				following(() => reviewText(kept, wallClock)),
				widthOf(io.stdout),
			),
		);
	return isDamaged ? EXIT.damaged : 0;
}

function widthOf({ isTTY, columns }: Io['stdout']): number {
	// A pseudo-terminal may say that it has 0 columns: nobody knows then.
	return isTTY && columns > 0 ? columns : WIDTH;
}

function page(text: string, columns: number): string {
	return text
		.split('\n')
		.flatMap((line) => folded(line, columns))
		.join('\n');
}
