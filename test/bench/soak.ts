/**
 * `npm run soak [SESSIONS]`: so many simulated sessions (2,000 unless told) in one home, one after the other as in a shop over years, with kills and torn
 * lines between. Exit code 1 where memory grows, a start takes longer than its history costs, a log cannot be read, or what was learned is not what the
 * logs teach when they are read anew.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { isDeepStrictEqual } from 'node:util';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { openSession } from '../../src/cli/bend.ts';
import { readAnyway, sessionFolder } from '../../src/journal/catalogue.ts';
import { cachePath } from '../../src/journal/kept-cache.ts';
import { type KeptRow, rowOf } from '../../src/journal/kept-row.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import type { LiveSession } from '../../src/journal/live.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { type Operator, operatorAt } from '../helpers/shop/operator.ts';
import { newMachine } from '../helpers/shop/plain-shop.ts';

const SEED = 64_000_000;
/** Every so many sessions one is killed, and one has a line torn off before it is gone on with. */
const KILLED = 10;
const TORN = 7;
/** A tube that takes more answers than this is left. */
const MOST_ANSWERS = 300;
const AS_DRAWN = { mirror: false, from: 'start' } as const;

const sessions = Number(process.argv[2] ?? 2000);
if (!(Number.isInteger(sessions) && sessions >= 8))
	throw new RangeError(`The number of sessions is a whole one from 8, not "${process.argv[2]}".`);

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
const home = mkdtempSync(join(tmpdir(), 'pullbook-soak-'));
const ignore = () => {};
const faults: string[] = [];
const starts: number[] = [];
const heaps: number[] = [];
const counts = { killed: 0, torn: 0, answers: 0 };

try {
	for (let n = 0; n < sessions; n++) await one(n);
	judge();
} finally {
	rmSync(home, { recursive: true, force: true });
}

async function one(n: number): Promise<void> {
	const draw = draws(SEED + n);
	const file = SAMPLE_JOBS[n % SAMPLE_JOBS.length]!;
	const operator = operatorAt(newMachine(SEED + (n % 5)));
	if (n % KILLED === KILLED - 1) await killed(file, operator, 1 + Math.floor(draw.uniform(0, 8)));
	const isLeft = n % KILLED === KILLED - 1;
	const began = performance.now();
	const session = openSession({ file, resume: isLeft ? true : null, learn: true, home, as: AS_DRAWN }, ignore);
	starts.push(performance.now() - began);
	if (n % TORN === TORN - 1) tornAndGoneOn(file, session, operator, draw);
	else bent(session, operator, MOST_ANSWERS);
	if (n % Math.ceil(sessions / 40) === 0) {
		collect();
		heaps.push(process.memoryUsage().heapUsed / 1e6);
	}
	if ((n + 1) % 100 === 0)
		console.log(`${n + 1} sessions, start ${starts.at(-1)!.toFixed(0)} ms, heap ${heaps.at(-1)!.toFixed(0)} MB`);
}

/** Answers until the tube is done; what is given up is given up. */
function bent(session: LiveSession, operator: Operator, answers: number): void {
	for (let n = 0; n < answers && session.ask !== null; n++) {
		session.answerText(JSON.stringify(operator.answer(session.ask)));
		counts.answers++;
	}
	session.close();
}

/** The power goes in the middle of a line: what was acknowledged before it stands, and the session goes on. */
function tornAndGoneOn(file: string, session: LiveSession, operator: Operator, draw: Draw): void {
	bent(session, operator, 1 + Math.floor(draw.uniform(0, 6)));
	const { ask, logPath, id } = session;
	if (ask === null) return;
	const before = readLog(logPath).records.length;
	appendFileSync(logPath, `0a1b2c3d {"seq":${before},"v":1,"at":"2026-`);
	counts.torn++;
	const again = openSession({ file, resume: id, learn: true, home, as: AS_DRAWN }, ignore);
	// The resume itself is one record more.
	if (readLog(logPath).records.length !== before + 1)
		faults.push(`${id}: acknowledged lines were lost with a torn one`);
	bent(again, operator, MOST_ANSWERS);
}

/** A process of its own, killed after so many answers. */
async function killed(file: string, operator: Operator, answers: number): Promise<void> {
	const child = spawn(process.execPath, [PROGRAM, 'bend', file, '--lines', '--home', home], {
		stdio: ['pipe', 'pipe', 'ignore'],
	});
	let given = 0;
	for await (const line of createInterface({ input: child.stdout! })) {
		const output = JSON.parse(line) as Ask | { note: string };
		if (!('ask' in output)) continue;
		if (given++ === answers) break;
		child.stdin!.write(`${JSON.stringify(operator.answer(output))}\n`);
	}
	await ended(child);
	counts.killed++;
}

function ended(child: ChildProcess): Promise<void> {
	return new Promise((resolve) => {
		child.on('exit', () => resolve());
		child.kill('SIGKILL');
	});
}

/** Whether two rows tell the same; what they lie in is their own affair. */
function isSame(a: KeptRow, b: KeptRow | undefined): boolean {
	return b !== undefined && isDeepStrictEqual(told(a), told(b));
}

/** As JSON has it: a field that is absent is none. */
function told({ id, job, at, touched, status, summary, kin, pulls, lesson, figures, problem }: KeptRow): unknown {
	return JSON.parse(JSON.stringify({ id, job, at, touched, status, summary, kin, pulls, lesson, figures, problem }));
}

/** The median of these. */
function middle(values: readonly number[]): number {
	return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function judge(): void {
	const part = Math.floor(sessions / 4);
	const [second, last] = [middle(starts.slice(part, 2 * part)), middle(starts.slice(-part))];
	// History twice as long may cost twice as much.
	if (last > 3 * second + 20)
		faults.push(`a start took ${second.toFixed(0)} ms in the second quarter and ${last.toFixed(0)} in the last`);
	const quarter = Math.floor(heaps.length / 4);
	const [early, late] = [middle(heaps.slice(quarter, 2 * quarter)), middle(heaps.slice(-quarter))];
	if (late > 1.3 * early + 5)
		faults.push(`the heap held ${early.toFixed(0)} MB in the second quarter and ${late.toFixed(0)} in the last`);
	const logs = readdirSync(sessionFolder(home)).filter((name) => name.endsWith('.log'));
	for (const name of logs) {
		const { damage, tail } = readLog(join(sessionFolder(home), name));
		if (damage !== null || tail !== null) faults.push(`${name} cannot be read whole`);
	}
	const known = new SessionCache(home).read().rows;
	rmSync(cachePath(home));
	const byLastLines = new SessionCache(home).read().rows;
	const anew = known.map(({ id }) => rowOf(readAnyway(home, id), 'fold'));
	const differing = known.filter((row, i) => !isSame(row, anew[i]) || !isSame(row, byLastLines[i]));
	if (differing.length > 0 || known.length !== byLastLines.length)
		faults.push(`what was learned is not what the logs teach: ${differing.map(({ id }) => id).join(', ')}`);
	console.log(
		`${sessions} sessions (${logs.length} logs, ${counts.answers} answers, ${counts.killed} killed, ${counts.torn} lines torn), seed ${SEED}: ` +
			`start ${second.toFixed(0)} ms, at the end ${last.toFixed(0)}; heap ${early.toFixed(0)} MB, at the end ${late.toFixed(0)}`,
	);
	for (const fault of faults) console.log(`NOT HELD: ${fault}`);
	process.exitCode = faults.length > 0 ? 1 : 0;
}
