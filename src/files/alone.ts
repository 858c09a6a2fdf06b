import { closeQuietly, FOR_OWNER, FRESH_FILE, removeQuietly } from './disk.ts';
import { codeOf } from './error-codes.ts';
import type { FsPort } from './fs-port.ts';

/** Longer than any such change takes; what is older was left by a program that was killed. */
const LEFT_MS = 10_000;
/** As long as one waits for another's change. */
const PATIENCE_MS = 3_000;
const LOOK_AGAIN_MS = 15;

/** Another program was changing the file all the time that one may wait. */
export class Busy extends Error {
	readonly lock: string;
	constructor(lock: string) {
		super(lock);
		this.lock = lock;
	}
}

/** Does this while nobody else does the like to the file at `path`, whose folder must be there. Throws Busy, or what the disk threw. */
export function alone<T>(fs: FsPort, path: string, does: () => T, now: () => number = Date.now): T {
	const lock = `${path}.lock`;
	const end = now() + PATIENCE_MS;
	while (!lockTaken(fs, lock)) {
		if (isAbandoned(fs, lock, now())) giveUp(fs, lock);
		else if (now() > end) throw new Busy(lock);
		else wait(LOOK_AGAIN_MS);
	}
	try {
		return does();
	} finally {
		removeQuietly(fs, lock);
	}
}

function lockTaken(fs: FsPort, lock: string): boolean {
	try {
		closeQuietly(fs, fs.openSync(lock, FRESH_FILE, FOR_OWNER));
		return true;
	} catch (error) {
		if (codeOf(error) === 'EEXIST') return false;
		throw error;
	}
}

function isAbandoned(fs: FsPort, lock: string, now: number): boolean {
	try {
		return Math.abs(now - fs.statSync(lock).mtimeMs) > LEFT_MS;
	} catch (error) {
		// Given back in this moment.
		if (codeOf(error) === 'ENOENT') return false;
		throw error;
	}
}

/** Takes away a lock that was left. Of two who find it, the one that comes second must not take away what the first has put there since. */
function giveUp(fs: FsPort, lock: string): void {
	const aside = `${lock}.left-${process.pid}`;
	try {
		const { ino } = fs.statSync(lock);
		fs.renameSync(lock, aside);
		if (fs.statSync(aside).ino !== ino) fs.linkSync(aside, lock);
	} catch (error) {
		if (codeOf(error) !== 'ENOENT' && codeOf(error) !== 'EEXIST') throw error;
	}
	removeQuietly(fs, aside);
}

function wait(ms: number): void {
	Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}
