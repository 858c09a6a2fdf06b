import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { closeQuietly, FOR_OWNER, FRESH_FILE, removeQuietly, writeAll } from '../files/disk.ts';
import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { Locked, NotSaved } from './errors.ts';

/** The process that asks for a lock, and what it can tell of others. `boot` is null where the system has no boot id. */
export interface LockSelf {
	pid: number;
	host: string;
	boot: string | null;
	/** Is there a process of this number on this machine? */
	alive(pid: number): boolean;
}

/** A lock that this process holds. */
export interface Lock {
	path: string;
	token: string;
}

interface Holder {
	/** Names this very lock file: the token in it, or its inode and time when nothing can be read in it. */
	token: string;
	/** Null when the file holds no whole entry. */
	entry: null | { pid: number; host: string; boot: string | null };
	mtimeMs: number;
}

const EMPTY_IS_STALE_MS = 10_000;
const heldHere = new Set<string>();

function bootId(): string | null {
	try {
		return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
	} catch {
		// Not Linux: the lock is then judged by the process alone.
		return null;
	}
}

function alive(pid: number): boolean {
	try {
		process.kill(pid, 0);
		return !isReapable(pid);
	} catch (error) {
		// EPERM: it lives and belongs to somebody else.
		return codeOf(error) !== 'ESRCH';
	}
}

/** Killed, and only waited for by its parent: it writes nothing any more. Where the system does not tell, it counts as living. */
function isReapable(pid: number): boolean {
	try {
		return isZombie(readFileSync(`/proc/${pid}/stat`, 'latin1'));
	} catch {
		return false;
	}
}

/** By the line of `/proc/PID/stat` (proc(5)): the state stands behind the program's name, which may hold anything, in brackets. */
export function isZombie(stat: string): boolean {
	return stat.slice(stat.lastIndexOf(')') + 2).startsWith('Z');
}

export function thisProcess(): LockSelf {
	return { pid: process.pid, host: hostname(), boot: bootId(), alive };
}

function parseEntry(text: string): (Holder['entry'] & { token: string }) | null {
	let value: unknown;
	try {
		value = JSON.parse(text);
	} catch {
		// Empty or cut short by a crash: judged by its age.
		return null;
	}
	if (typeof value !== 'object' || value === null) return null;
	const { pid, host, boot, token } = value as Record<string, unknown>;
	if (!Number.isInteger(pid) || (pid as number) <= 0 || typeof host !== 'string') return null;
	if (typeof token !== 'string' || !/^[0-9a-f]+$/.test(token)) return null;
	return { pid: pid as number, host, boot: typeof boot === 'string' ? boot : null, token };
}

/** Who holds the lock; null when the file is gone. */
function readHolder(fs: FsPort, path: string): Holder | null {
	try {
		const facts = fs.statSync(path);
		const entry = parseEntry(fs.readFileSync(path).toString('utf8'));
		const token = entry?.token ?? `x${facts.ino}x${Math.floor(facts.mtimeMs)}`;
		return { token, entry, mtimeMs: facts.mtimeMs };
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return null;
		throw lockFault('lock-unreadable', path, error);
	}
}

function isStale(holder: Holder, self: LockSelf, now: Date): boolean {
	const { entry } = holder;
	if (!entry) return Math.abs(now.getTime() - holder.mtimeMs) > EMPTY_IS_STALE_MS;
	// Another machine's processes cannot be seen from here, nor those of a container with its own process numbers.
	if (entry.host !== self.host) return false;
	if (entry.boot !== null && self.boot !== null && entry.boot !== self.boot) return true;
	// A process number is given out again: an entry with ours that we did not write is from one that has ended.
	if (entry.pid === self.pid) return !heldHere.has(holder.token);
	return !self.alive(entry.pid);
}

/** Writes the lock file if there is none; null when there is one. */
function tryCreate(fs: FsPort, path: string, self: LockSelf): Lock | null {
	const token = randomBytes(8).toString('hex');
	let fd: number;
	try {
		fd = fs.openSync(path, FRESH_FILE, FOR_OWNER);
	} catch (error) {
		if (codeOf(error) === 'EEXIST') return null;
		throw lockFault('lock-unwritable', path, error);
	}
	try {
		const entry = { pid: self.pid, host: self.host, boot: self.boot, token };
		writeAll(fs, fd, Buffer.from(`${JSON.stringify(entry)}\n`));
	} catch (error) {
		removeQuietly(fs, path);
		throw lockFault('lock-unwritable', path, error);
	} finally {
		closeQuietly(fs, fd);
	}
	// Had we slept long between making the file and filling it, another may have taken it for a dead one.
	if (readHolder(fs, path)?.token !== token) return null;
	heldHere.add(token);
	return { path, token };
}

/**
 * Removes a stale lock, so that two who find the same one stale never remove each other's new one: the right to remove lock T is
 * itself a lock, named after T, and T is looked at again once that is held.
 */
function removeStale(fs: FsPort, path: string, stale: Holder, self: LockSelf, now: Date): void {
	const right = acquire(fs, `${path}.${stale.token}`, self, now);
	try {
		if (readHolder(fs, path)?.token === stale.token) fs.unlinkSync(path);
	} catch (error) {
		if (error instanceof NotSaved) throw error;
		throw lockFault('lock-stays', path, error);
	} finally {
		releaseLock(right, fs);
	}
}

function lockFault(code: 'lock-unreadable' | 'lock-unwritable' | 'lock-stays', lock: string, error: unknown): NotSaved {
	return new NotSaved({ code, lock, cause: causeOf(error) }, error, true);
}

function lockedBy(path: string, holder: Holder | null): Locked {
	const entry = holder?.entry;
	return new Locked({ code: 'locked', lock: path, holder: entry ? { pid: entry.pid, host: entry.host } : null });
}

function acquire(fs: FsPort, path: string, self: LockSelf, now: Date): Lock {
	for (let attempt = 0; attempt < 5; attempt++) {
		const lock = tryCreate(fs, path, self);
		if (lock) return lock;
		const holder = readHolder(fs, path);
		if (!holder) continue;
		if (!isStale(holder, self, now)) throw lockedBy(path, holder);
		removeStale(fs, path, holder, self, now);
	}
	throw lockedBy(path, readHolder(fs, path));
}

/**
 * Takes `<log>.lock`, over a stale one if need be. `now` judges the age of an empty lock file.
 * Throws Locked when another process holds it, NotSaved when it cannot be written.
 */
export function acquireLock(log: string, now: Date, fs: FsPort = realFs, self: LockSelf = thisProcess()): Lock {
	return acquire(fs, `${log}.lock`, self, now);
}

/** Whether a lock that was taken is still held: somebody may have removed it, or taken it for one that a dead process left. */
export function lockNow(lock: Lock, fs: FsPort = realFs): 'held' | 'gone' | 'taken' {
	const holder = readHolder(fs, lock.path);
	if (holder === null) return 'gone';
	return holder.token === lock.token ? 'held' : 'taken';
}

/**
 * Gives a lock back. One that has since been removed by hand, or taken by somebody else, is left alone. Never throws: a lock file that
 * cannot be removed is stale as soon as this process has ended, or asks for it again.
 */
export function releaseLock(lock: Lock, fs: FsPort = realFs): void {
	heldHere.delete(lock.token);
	try {
		if (readHolder(fs, lock.path)?.token === lock.token) fs.unlinkSync(lock.path);
	} catch {
		// See above: nothing depends on the file being gone.
	}
}
