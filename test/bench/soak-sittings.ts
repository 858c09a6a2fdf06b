/** How sittings end in `soak.ts`: in peace, by kill -9, by a power cut in the middle of a line, by a disk that fills up or fails. */
import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { openSession, surroundingsAt } from '../../src/cli/bend.ts';
import { type FsPort, realFs } from '../../src/files/fs-port.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { readLog } from '../../src/journal/read-log.ts';
import type { Draw } from '../../src/practice/random.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { PROGRAM } from '../helpers/disk/program.ts';
import type { Operator } from '../helpers/shop/operator.ts';

/** A tube that takes more answers than this is left. */
const MOST_ANSWERS = 300;
const AS_DRAWN = { mirror: false, from: 'start' } as const;
const ignore = () => {};

export interface Soaked {
	home: string;
	/** What did not hold. */
	faults: string[];
	counts: { answers: number; killed: number; torn: number; full: number; failed: number };
}

export const begun = (home: string, file: string): LiveSession =>
	openSession({ file, resume: null, learn: true, home, as: AS_DRAWN }, ignore);

const resumed = (home: string, file: string, id: string | true): LiveSession =>
	openSession({ file, resume: id, learn: true, home, as: AS_DRAWN }, ignore);

/** Answers until the tube is done, or so often. */
export function bent({ counts }: Soaked, session: LiveSession, operator: Operator, answers = MOST_ANSWERS): void {
	for (let n = 0; n < answers && session.ask !== null; n++) {
		session.answerText(JSON.stringify(operator.answer(session.ask)));
		counts.answers++;
	}
	session.close();
}

/** The power goes in the middle of a line: what was acknowledged before it stands, and the session goes on. */
export function torn(soaked: Soaked, file: string, session: LiveSession, operator: Operator, draw: Draw): void {
	bent(soaked, session, operator, 1 + Math.floor(draw.uniform(0, 6)));
	if (session.ask === null) return;
	const before = readLog(session.logPath).records.length;
	appendFileSync(session.logPath, `0a1b2c3d {"seq":${before},"v":1,"at":"2026-`);
	soaked.counts.torn++;
	goneOn(soaked, file, session.id, before, operator);
}

/** Resumed, there is the record of that more, and nothing less. */
function goneOn(soaked: Soaked, file: string, id: string, before: number, operator: Operator): void {
	const again = resumed(soaked.home, file, id);
	const now = readLog(again.logPath).records.length;
	if (now !== before + 1) soaked.faults.push(`${id}: ${before} lines were acknowledged, ${now - 1} are there`);
	bent(soaked, again, operator);
}

/** The disk is full for one answer, which is given again; or it fails at a flush, and the session is resumed once it is well. */
export function badDisk(soaked: Soaked, file: string, session: LiveSession, operator: Operator, draw: Draw): void {
	const isFull = draw.uniform(0, 1) < 0.5;
	bent(soaked, session, operator, 1 + Math.floor(draw.uniform(0, 6)));
	if (session.ask === null) return;
	const disk = breakable();
	const again = LiveSession.resume({ ...surroundingsAt(soaked.home), fs: disk.fs }, session.id, undefined, []);
	const before = readLog(again.logPath).records.length;
	const answer = JSON.stringify(operator.answer(again.ask!));
	disk.fails = isFull ? 'ENOSPC' : 'EIO';
	const [refused] = again.answerText(answer);
	disk.fails = null;
	const isRefused = refused !== undefined && 'code' in refused && refused.code === 'not-saved';
	if (!isRefused) soaked.faults.push(`${session.id}: ${isFull ? 'a full' : 'a failing'} disk took an answer`);
	if (again.isLost === isFull) soaked.faults.push(`${session.id}: the log is ${isFull ? '' : 'not '}given up`);
	soaked.counts[isFull ? 'full' : 'failed']++;
	if (isFull) again.answerText(answer);
	again.close();
	goneOn(soaked, file, session.id, isFull ? before + 1 : before, operator);
}

/** The disk, whose writes stop after a few bytes, or whose flushes fail, as long as `fails` says so. */
function breakable(): { fs: FsPort; fails: 'ENOSPC' | 'EIO' | null } {
	const disk: { fs: FsPort; fails: 'ENOSPC' | 'EIO' | null } = { fs: realFs, fails: null };
	const refuse = () => {
		throw Object.assign(new Error(`${disk.fails}: put in by the soak`), { code: disk.fails });
	};
	disk.fs = {
		...realFs,
		writeSync(fd, bytes, offset, length) {
			if (disk.fails !== 'ENOSPC') return realFs.writeSync(fd, bytes, offset, length);
			return offset === 0 ? realFs.writeSync(fd, bytes, 0, Math.min(9, length)) : refuse();
		},
		fdatasyncSync(fd) {
			if (disk.fails === 'EIO') refuse();
			realFs.fdatasyncSync(fd);
		},
	};
	return disk;
}

/** A process of its own is killed after so many answers, and the session gone on with. */
export async function killed(soaked: Soaked, file: string, operator: Operator, answers: number): Promise<void> {
	const child = spawn(process.execPath, [PROGRAM, 'bend', file, '--lines', '--home', soaked.home], {
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
	soaked.counts.killed++;
	bent(soaked, resumed(soaked.home, file, true), operator);
}

function ended(child: ChildProcess): Promise<void> {
	return new Promise((resolve) => {
		child.on('exit', () => resolve());
		child.kill('SIGKILL');
	});
}
