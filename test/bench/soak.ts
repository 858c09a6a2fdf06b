/**
 * `npm run soak [SESSIONS]`: so many simulated sessions (2,000 unless told) in one home, one after the other as in a shop over years, with kills, torn
 * lines and bad disks between. Most are tubes of one or two bends, as in a shop; every tenth is a sample. Exit code 1 where memory grows, a start takes
 * longer than its history costs, a log cannot be read, or what was learned is not what the logs teach when they are read anew. Times are the processor's.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readAnyway, sessionFolder } from '../../src/journal/catalogue.ts';
import { cachePath } from '../../src/journal/kept-cache.ts';
import { rowOf } from '../../src/journal/kept-row.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import type { LiveSession } from '../../src/journal/live.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { tellsTheSame } from '../../src/journal/same-row.ts';
import { draws } from '../../src/practice/random.ts';
import { collect } from '../helpers/collect.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { newMachine } from '../helpers/shop/plain-shop.ts';
import { badDisk, begun, bent, killed, type Soaked, torn } from './soak-sittings.ts';

const SEED = 64_000_000;
/** Every so many sessions: a sample is bent, one is killed, one has a line torn off, one meets a bad disk. */
const EVERY = { sample: 10, killed: 20, torn: 7, bad: 9 };
const SHOWN = 100;
const STARTS = 15;
/** A start in the home of the soak, over one where the same logs were just read for the first time. */
const LIMITS = { start: 1.25, heap: 1.3 };

const sessions = Number(process.argv[2] ?? 2000);
if (!(Number.isInteger(sessions) && sessions >= 40))
	throw new RangeError(`The number of sessions is a whole one from 40, not "${process.argv[2]}".`);

const folder = mkdtempSync(join(tmpdir(), 'pullbook-soak-'));
const home = join(folder, 'home');
const soaked: Soaked = { home, faults: [], counts: { answers: 0, killed: 0, torn: 0, full: 0, failed: 0 } };
const { faults, counts } = soaked;
const starts: number[] = [];
const heaps: number[] = [];

try {
	const small = smallJobs();
	for (let n = 0; n < sessions; n++) await one(n, small);
	judge(small[0]!);
} finally {
	rmSync(folder, { recursive: true, force: true });
}

/** Job files of one and two bends, on three benders. */
function smallJobs(): string[] {
	const bends = [{ straight: 12, angle: 40, rotation: 0 }];
	const one = change(plainJobFile(), 'shape', { bends, last: 14 }) as object;
	const jobs = [one, change(one, 'tooling.bender', 'yard') as object, plainJobFile()];
	return jobs.map((job, n) => {
		const file = join(folder, `fender-${n}.json`);
		writeFileSync(file, JSON.stringify({ ...job, name: `Fender bar ${n + 1}` }));
		return file;
	});
}

async function one(n: number, small: readonly string[]): Promise<void> {
	const draw = draws(SEED + n);
	const isNth = (every: number) => n % every === every - 1;
	const files = isNth(EVERY.sample) ? SAMPLE_JOBS : small;
	const file = files[Math.floor(n / (isNth(EVERY.sample) ? EVERY.sample : 1)) % files.length]!;
	const operator = operatorAt(newMachine(SEED + (n % 5)));
	if (isNth(EVERY.killed)) await killed(soaked, file, operator, 1 + Math.floor(draw.uniform(0, 8)));
	else {
		const [session, ms] = started(home, file);
		starts.push(ms);
		if (isNth(EVERY.torn)) torn(soaked, file, session, operator, draw);
		else if (isNth(EVERY.bad)) badDisk(soaked, file, session, operator, draw);
		else bent(soaked, session, operator);
	}
	if (n % Math.ceil(sessions / 40) === 0) heaps.push(heapNow());
	if ((n + 1) % SHOWN !== 0) return;
	const seconds = (process.cpuUsage().user / 1e6).toFixed(0);
	console.log(
		`${n + 1} sessions, ${seconds} s: start ${middle(starts.slice(-SHOWN)).toFixed(0)} ms, heap ${heaps.at(-1)!.toFixed(0)} MB`,
	);
}

/** A new session, and the milliseconds of the processor until its first question. */
function started(where: string, file: string): [LiveSession, number] {
	const before = process.cpuUsage();
	const session = begun(where, file);
	const { user, system } = process.cpuUsage(before);
	return [session, (user + system) / 1000];
}

function heapNow(): number {
	collect();
	return process.memoryUsage().heapUsed / 1e6;
}

function middle(values: readonly number[]): number {
	return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function judge(job: string): void {
	const quarter = Math.floor(heaps.length / 4);
	const [early, late] = [middle(heaps.slice(quarter, 2 * quarter)), middle(heaps.slice(-quarter))];
	if (late > LIMITS.heap * early)
		faults.push(`the heap held ${early.toFixed(0)} MB in the second quarter and ${late.toFixed(0)} in the last`);
	const logs = readdirSync(sessionFolder(home)).filter((name) => name.endsWith('.log'));
	for (const name of logs) {
		const { damage, tail } = readLog(join(sessionFolder(home), name));
		if (damage !== null || tail !== null) faults.push(`${name} cannot be read whole`);
	}
	if (logs.length !== sessions) faults.push(`${sessions} sessions left ${logs.length} logs`);
	const start = startTimes(job);
	const learned = learnedFaults();
	faults.push(...learned);
	if (start.soaked > LIMITS.start * start.fresh + 1)
		faults.push('a start takes longer than in a home where the same logs were just read for the first time');
	const { answers, ...struck } = counts;
	const ways = Object.entries(struck).map(([way, count]) => `${count} ${way}`);
	console.log(
		`${sessions} sessions (${logs.length} logs, ${answers} answers; ${ways.join(', ')}), seed ${SEED}: figures of ${logs.length - learned.length} are what ` +
			`their logs teach; start ${start.soaked.toFixed(1)} ms, ${start.fresh.toFixed(1)} with the same logs in a fresh home, ${start.empty.toFixed(1)} in an ` +
			`empty one; heap ${early.toFixed(1)} MB in the second quarter, ${late.toFixed(1)} in the last`,
	);
	for (const fault of faults) console.log(`NOT HELD: ${fault}`);
	process.exitCode = faults.length > 0 ? 1 : 0;
}

/** Which sessions' figures are not the same as kept through the years, from last lines alone, and by folding every line. */
function learnedFaults(): string[] {
	const known = new SessionCache(home).read().rows;
	rmSync(cachePath(home));
	const byLastLines = new SessionCache(home).read().rows;
	if (byLastLines.length !== known.length)
		return [`${known.length} sessions were known, ${byLastLines.length} are found`];
	const differing = known.filter((row, i) => {
		const anew = rowOf(readAnyway(home, row.id), 'fold');
		return anew.problem !== null || !tellsTheSame(row, anew) || !tellsTheSame(byLastLines[i]!, anew);
	});
	return differing.map(({ id }) => `${id}: what was learned is not what its log teaches`);
}

/** Medians of starts in the home of the soak, in a fresh one with the same logs, and in an empty one, taken in turns. */
function startTimes(job: string): { soaked: number; fresh: number; empty: number } {
	const [fresh, empty] = [join(folder, 'fresh'), join(folder, 'empty')];
	mkdirSync(empty);
	cpSync(sessionFolder(home), sessionFolder(fresh), { recursive: true });
	new SessionCache(fresh).read();
	const homes = { soaked: home, fresh, empty };
	const times = { soaked: [] as number[], fresh: [] as number[], empty: [] as number[] };
	for (let n = 0; n < STARTS; n++) {
		for (const [name, where] of Object.entries(homes)) {
			const [session, ms] = started(where, job);
			times[name as keyof typeof times].push(ms);
			session.close();
			rmSync(session.logPath);
		}
	}
	return { soaked: middle(times.soaked), fresh: middle(times.fresh), empty: middle(times.empty) };
}
