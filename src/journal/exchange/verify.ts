/** Every log of a home looked through: whether it is as it was written, and whether a session follows from it. */
import { type FsPort, realFs } from '../../files/fs-port.ts';
import { namesIn, readAnyway, sessionFolder } from '../catalogue.ts';
import type { KeptRow } from '../kept-row.ts';
import type { Noticed, Verified } from './facts.ts';

/** Names that the program gives to what lies beside logs: locks, marks, cut lines, logs brought home, files in the making. */
const BESIDE = /\.log\.(lock(\..*)?|moved|imported|merged|torn-.*|new-\d+)$/;

/**
 * Reads every byte of every log anew. `rows`: what they came to when they were folded, of the same home; a log that has not changed since is
 * not folded again. `onEach` hears how many are left. Throws JournalError where the folder cannot be read.
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
		const { records, tail, problem } = readAnyway(home, id, fs);
		found.lines += records.length;
		const why = problem ?? row.problem;
		if (why !== null) found.faults.push({ name: id, why });
		if (tail !== null) found.noticed.push({ name: id, code: 'cut-line', bytes: tail.bytes });
		if (row.startId !== '' && row.startId !== id) found.noticed.push({ name: id, code: 'apart', of: row.startId });
	}
	return { ...found, noticed: [...found.noticed, ...strangersIn(home, new Set(rows.map(({ id }) => id)), fs)] };
}

/** What lies among the logs and is none: nobody would look for it there. */
function strangersIn(home: string, ids: ReadonlySet<string>, fs: FsPort): Noticed[] {
	const isOurs = (name: string) => ids.has(name.replace(/\.log$/, '')) || BESIDE.test(name);
	return namesIn(sessionFolder(home), fs)
		.filter((name) => !isOurs(name))
		.map((name) => ({ name, code: 'no-log' }));
}
