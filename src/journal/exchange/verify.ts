/** Every log of a home looked through: whether it is as it was written, and whether a session follows from it. */
import { type FsPort, realFs } from '../../files/fs-port.ts';
import { namesIn, type ReadSession, readAnyway, sessionFolder } from '../catalogue.ts';
import type { JournalFault } from '../facts.ts';
import { type KeptRow, rowOf } from '../kept-row.ts';
import { tellsTheSame } from '../same-row.ts';
import type { Noticed, Verified } from './facts.ts';

/** Names that the program gives to what lies beside logs: locks, marks, cut lines, logs brought home, files in the making. */
const BESIDE = /\.log\.(lock(\..*)?|moved|rescue|imported|merged|torn-.*|new-\d+)$/;

/**
 * Reads every byte of every log anew and folds every line, whatever its last line or the list says that it comes to. `rows`: the list, of the
 * same home. `onEach` hears how many are left. Throws JournalError where the folder cannot be read.
 */
export function verifySessions(
	home: string,
	rows: readonly KeptRow[],
	fs: FsPort = realFs,
	onEach: (remaining: number) => void = () => {},
): Verified {
	const found: Verified = { sessions: rows.length, lines: 0, faults: [], noticed: [] };
	for (const [n, row] of rows.entries()) {
		onEach(rows.length - n);
		const { id } = row;
		const kept = readAnyway(home, id, fs);
		const { records, tail } = kept;
		found.lines += records.length;
		const why = faultIn(kept, row);
		if (why !== null) found.faults.push({ name: id, why });
		if (tail !== null) found.noticed.push({ name: id, code: 'cut-line', bytes: tail.bytes });
		if (row.startId !== '' && row.startId !== id) found.noticed.push({ name: id, code: 'apart', of: row.startId });
	}
	return { ...found, noticed: [...found.noticed, ...strangersIn(home, new Set(rows.map(({ id }) => id)), fs)] };
}

/** What is wrong with a log, or with what is said of it without folding it; null where all is right. */
function faultIn(kept: ReadSession, listed: KeptRow): JournalFault | null {
	const truth = rowOf(kept, 'fold');
	if (truth.problem !== null) return truth.problem;
	const { path: log } = kept;
	if (!tellsTheSame(rowOf(kept), truth)) return { code: 'comes-to-other', log, by: 'last-line' };
	return tellsTheSame(listed, truth) ? null : { code: 'comes-to-other', log, by: 'list' };
}

/** What lies among the logs and is none: nobody would look for it there. */
function strangersIn(home: string, ids: ReadonlySet<string>, fs: FsPort): Noticed[] {
	const isOurs = (name: string) => ids.has(name.replace(/\.log$/, '')) || BESIDE.test(name);
	return namesIn(sessionFolder(home), fs)
		.filter((name) => !isOurs(name))
		.map((name) => ({ name, code: 'no-log' }));
}
