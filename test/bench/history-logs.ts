/** Homes with many kept sessions: a few really simulated ones, copied under new ids. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadJob } from '../../src/job/load.ts';
import { newSessionId, sessionFolder, sessionPath } from '../../src/journal/catalogue.ts';
import { decodeRecord, encodeRecord } from '../../src/journal/record.ts';
import type { Start } from '../../src/session/log/start.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';

/** One simulated session: its first record, and all lines after it as they stand in its log. */
interface Simulated {
	start: Start;
	rest: Buffer;
}

const SEEDS = [11, 12, 13];
const FIRST_MS = Date.UTC(2024, 0, 1, 8);
const HOUR_MS = 3_600_000;

/** Every sample job bent by a simulated operator to its end, once a seed; they teach what later ones learn. `home` is where the logs are made. */
export function simulatedSessions(jobs: readonly string[], home: string): Simulated[] {
	let day = 0;
	return SEEDS.flatMap((seed) => jobs.map((job) => simulated(job, seed, ++day, home)));
}

function simulated(file: string, seed: number, day: number, home: string): Simulated {
	const { job } = loadJob(file, () => undefined);
	const { ended, logPath } = bendIn(home, { day, job, seed });
	if (ended !== 'done') throw new Error(`${logPath} did not come to its end`);
	const log = readFileSync(logPath);
	const lineEnd = log.indexOf('\n');
	const first = decodeRecord(log.subarray(0, lineEnd), 0);
	if (!('record' in first)) throw new Error(`${logPath} does not begin with a record`);
	return { start: first.record.start as Start, rest: log.subarray(lineEnd + 1) };
}

/** Puts sessions `from` to `to` of a shop's history into a home, an hour between them; each is one of `kinds`, and may teach. */
export function fillHome(home: string, kinds: readonly Simulated[], from: number, to: number): void {
	mkdirSync(sessionFolder(home), { recursive: true });
	for (let n = from; n < to; n++) {
		const { start, rest } = kinds[n % kinds.length]!;
		const at = new Date(FIRST_MS + n * HOUR_MS);
		const id = newSessionId(at, n.toString(36));
		const own: Start = { ...start, id, at: at.toISOString(), learn: true };
		const first = encodeRecord({ seq: 0, v: 1, at: own.at, start: own });
		writeFileSync(sessionPath(home, id), Buffer.concat([first, rest]));
	}
}

export function newHome(folder: string, name: string): string {
	const home = join(folder, name);
	mkdirSync(home);
	return home;
}
