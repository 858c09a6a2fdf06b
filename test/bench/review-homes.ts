/** Homes to be looked at: one with a session of very many pulls, one with a cache of very many sessions. */
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { realFs } from '../../src/files/fs-port.ts';
import { newSessionId, readSession, sessionFolder, sessionPath } from '../../src/journal/catalogue.ts';
import type { FoldedRow } from '../../src/journal/folded-row.ts';
import { writeCache } from '../../src/journal/kept-cache.ts';
import { rowOf } from '../../src/journal/kept-row.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const BENDS = 8;
const FIRST_MS = Date.UTC(2026, 0, 5, 8);
const HOUR_MS = 3_600_000;

/** Eight bends, each pulled over and over by somebody who trusts nothing; gives how many pulls it took. */
export function keepManyPulls(home: string, least: number): number {
	const straights = Array.from(
		{ length: BENDS },
		(_, i) => [10, 30 + 5 * (i % 4), i === 0 ? 0 : 90 * (i % 3)] as const,
	);
	const job = plainJob({
		name: 'Many pulls',
		shape: byBends(straights, 12),
		trim: { start: 2, end: 2 },
		tooling: { growth: 1, clamp: 2, follow: 2 },
	});
	const now = () => new Date(FIRST_MS);
	const about = { home, program: 'bench', now, random: () => 'many' };
	const session = LiveSession.begin(about, { job, path: '/none.json', raw: {} }, false, []);
	let [pulls, ofBend] = [0, 0];
	const say = (answer: object) => session.answerText(JSON.stringify(answer));
	for (let open = session.ask; open !== null; open = session.ask) {
		if (open.ask === 'set') say({ ready: true });
		else if (open.ask === 'confirm') say({ keep: true });
		else if (open.ask === 'measure') say({ angle: Math.round(10 * (open.expect.angle - 0.4)) / 10 });
		else if (open.ask === 'check') say({ reading: open.expect.value });
		else if (open.ask === 'pull') {
			say({ loaded: open.stop });
			pulls++;
			ofBend++;
		} else if (ofBend < least / BENDS && open.advice !== 'relieve') say({ do: 'pull' });
		else {
			say({ do: 'accept' });
			ofBend = 0;
		}
	}
	session.close();
	return pulls;
}

/** So many sessions in the cache, each with a log that looks as it did when it was folded: they are not read again. */
export function keepRows(home: string, count: number): void {
	const made = `${home}-made`;
	const pulls = keepManyPulls(made, BENDS);
	if (pulls === 0) throw new Error('The session that is copied has no pulls.');
	const row = rowOf(readSession(made, newSessionId(new Date(FIRST_MS), 'many')));
	mkdirSync(sessionFolder(home), { recursive: true });
	const rows = Array.from({ length: count }, (_, n): FoldedRow => {
		const at = new Date(FIRST_MS + n * HOUR_MS).toISOString();
		const id = newSessionId(new Date(at), n.toString(36));
		const path = sessionPath(home, id);
		writeFileSync(path, '');
		const { size, mtimeMs } = statSync(path);
		const job = { ...row.job!, name: `Rail ${n % 40}`, bender: `bay ${n % 3}`, heat: `H ${n % 97}` };
		return { row: { ...row, id, path, at, startId: id, touched: at, job }, size, mtimeMs };
	});
	// As the program writes them: in the order of the logs, the newest first.
	rows.sort((a, b) => (a.row.path < b.row.path ? 1 : -1));
	if (writeCache(home, rows, realFs) === null) throw new Error('The cache could not be written.');
}
