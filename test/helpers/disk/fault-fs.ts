/**
 * A disk in memory whose calls can be made to fail, and whose power can be cut. It forgets as a real one may: what was not flushed can
 * be kept, dropped or zeroed sector by sector, new and removed names without a flush of their folder can be kept or dropped, and what a
 * failed flush left behind is never written by a later one (as PostgreSQL's "Fsync Errors" describes for Linux).
 */
import { constants } from 'node:fs';
import { dirname } from 'node:path';
import type { FileFacts, FsPort } from '../../../src/files/fs-port.ts';
import { cutInode, Inode } from './fault-inode.ts';

/** What goes wrong at call number `at` (from 1). */
export type Fault =
	/** The call throws this errno; with `forGood` so does every later one that changes the disk or flushes. `under`: only there. */
	| { kind: 'errno'; at: number; code: string; forGood?: boolean; under?: string }
	/** A write puts down `bytes` bytes and then throws, or with code '' just says so. Other calls go well. */
	| { kind: 'partial'; at: number; code: string; bytes: number }
	/** The power goes before the call is done. */
	| { kind: 'cut'; at: number };

export class PowerCut extends Error {}

/** A fault of the test's own, thrown as the system would. */
export function errno(code: string, call: string): Error {
	return Object.assign(new Error(`${code}: made to fail, ${call}`), { code });
}

type Names = Map<string, Inode>;

function factsOf({ data, ino, mtimeMs, isFolder }: Inode): FileFacts {
	return { size: data.length, ino, dev: 1, mtimeMs, isFile: () => !isFolder };
}

export class FaultFs implements FsPort {
	/** Calls made so far, with their paths. */
	readonly trace: string[] = [];
	fault: Fault | null;
	#names: Names;
	#namesOnDisk: Names;
	readonly #open = new Map<number, { inode: Inode; path: string }>();
	#nextFd = 10;
	#nextIno: number;
	#isOff = false;

	constructor(fault: Fault | null = null, names: Names = new Map([['/', new Inode(1, true)]])) {
		this.fault = fault;
		this.#names = names;
		this.#namesOnDisk = new Map(names);
		this.#nextIno = 2 + Math.max(...[...names.values()].map((inode) => inode.ino));
	}

	/** The same disk under a new process: everything the old one wrote is in the cache still. */
	afterProcessEnd(): FaultFs {
		const next = new FaultFs(null, this.#names);
		next.#namesOnDisk = this.#namesOnDisk;
		return next;
	}

	/** The disk after the power went and came back; `pick(n)` chooses among n fates (0 always keeps, 1 always drops). */
	afterPowerCut(pick: (n: number) => number): FaultFs {
		const names: Names = new Map();
		for (const path of [...new Set([...this.#names.keys(), ...this.#namesOnDisk.keys()])].sort()) {
			const [now, disk] = [this.#names.get(path), this.#namesOnDisk.get(path)];
			const inode = now === disk || pick(2) === 0 ? now : disk;
			if (!inode || (path !== '/' && !names.has(dirname(path)))) continue;
			names.set(path, inode.isFolder ? inode : cutInode(inode, pick));
		}
		return new FaultFs(null, names);
	}

	/** Puts a file there as if it had long been on disk. */
	place(path: string, bytes: Uint8Array, mtimeMs = 0): void {
		const inode = new Inode(this.#nextIno++, false);
		inode.write(0, bytes);
		inode.flush();
		inode.mtimeMs = mtimeMs;
		this.#names.set(path, inode);
		this.#namesOnDisk.set(path, inode);
	}

	/** As place, of a folder. */
	placeFolder(path: string): void {
		const inode = new Inode(this.#nextIno++, true);
		this.#names.set(path, inode);
		this.#namesOnDisk.set(path, inode);
	}

	/** Paths of all files, in order. */
	files(): string[] {
		return [...this.#names.entries()]
			.filter(([, inode]) => !inode.isFolder)
			.map(([path]) => path)
			.sort();
	}

	get calls(): number {
		return this.trace.length;
	}

	openSync(path: string, flags: number): number {
		this.#step('open', path, (flags & constants.O_CREAT) !== 0);
		let inode = this.#names.get(path);
		if (inode && flags & constants.O_EXCL) throw errno('EEXIST', path);
		if (!inode && !(flags & constants.O_CREAT)) throw errno('ENOENT', path);
		if (!inode) {
			inode = new Inode(this.#nextIno++, false);
			this.#enter(path, inode);
		}
		if (flags & constants.O_TRUNC) inode.data = inode.data.subarray(0, 0);
		this.#open.set(this.#nextFd, { inode, path });
		return this.#nextFd++;
	}

	closeSync(fd: number): void {
		const { path } = this.#file(fd);
		this.#open.delete(fd);
		this.#step('close', path, false);
	}

	writeSync(fd: number, bytes: Uint8Array, offset: number, length: number): number {
		const { inode, path } = this.#file(fd);
		const part = this.fault?.kind === 'partial' && this.fault.at === this.calls + 1 ? this.fault : null;
		this.#step('write', path, true);
		const count = part ? Math.min(length, part.bytes) : length;
		inode.write(inode.data.length, bytes.subarray(offset, offset + count));
		if (part?.code) throw errno(part.code, `write ${path}`);
		return count;
	}

	fdatasyncSync(fd: number): void {
		this.#flush(fd, 'fdatasync');
	}

	fsyncSync(fd: number): void {
		this.#flush(fd, 'fsync');
	}

	ftruncateSync(fd: number, size: number): void {
		const { inode, path } = this.#file(fd);
		this.#step('ftruncate', path, true);
		inode.data = inode.data.subarray(0, size);
	}

	fstatSync(fd: number): FileFacts {
		const { inode, path } = this.#file(fd);
		this.#step('fstat', path, false);
		return factsOf(inode);
	}

	statSync(path: string): FileFacts {
		this.#step('stat', path, false);
		const inode = this.#find(path);
		return factsOf(inode);
	}

	readFileSync(path: string): Buffer {
		this.#step('readFile', path, false);
		return Buffer.from(this.#find(path).data);
	}

	readdirSync(path: string): string[] {
		this.#step('readdir', path, false);
		this.#find(path);
		return [...this.#names.keys()]
			.filter((p) => p !== path && dirname(p) === path)
			.map((p) => p.slice(path.length + 1));
	}

	mkdirSync(path: string): void {
		this.#step('mkdir', path, true);
		if (this.#names.has(path)) throw errno('EEXIST', path);
		this.#enter(path, new Inode(this.#nextIno++, true));
	}

	unlinkSync(path: string): void {
		this.#step('unlink', path, true);
		this.#find(path);
		this.#names.delete(path);
	}

	linkSync(from: string, to: string): void {
		this.#step('link', to, true);
		if (this.#names.has(to)) throw errno('EEXIST', to);
		this.#enter(to, this.#find(from));
	}

	renameSync(from: string, to: string): void {
		this.#step('rename', to, true);
		const inode = this.#find(from);
		this.#enter(to, inode);
		this.#names.delete(from);
	}

	/** Removes a name behind the program's back, as a person does. */
	vanish(path: string): void {
		for (const name of [...this.#names.keys()])
			if (name === path || name.startsWith(`${path}/`)) {
				this.#names.delete(name);
				this.#namesOnDisk.delete(name);
			}
	}

	#enter(path: string, inode: Inode): void {
		if (!this.#names.get(dirname(path))?.isFolder) throw errno('ENOENT', path);
		this.#names.set(path, inode);
	}

	#find(path: string): Inode {
		const inode = this.#names.get(path);
		if (!inode) throw errno('ENOENT', path);
		return inode;
	}

	#file(fd: number): { inode: Inode; path: string } {
		if (this.#isOff) throw new PowerCut();
		const file = this.#open.get(fd);
		if (!file) throw errno('EBADF', String(fd));
		return file;
	}

	#flush(fd: number, call: string): void {
		const { inode, path } = this.#file(fd);
		try {
			this.#step(call, path, true);
		} catch (error) {
			if (!(error instanceof PowerCut)) inode.failToFlush();
			throw error;
		}
		inode.flush();
		if (!inode.isFolder) return;
		for (const name of new Set([...this.#names.keys(), ...this.#namesOnDisk.keys()])) {
			if (dirname(name) !== path || name === path) continue;
			const now = this.#names.get(name);
			if (now) this.#namesOnDisk.set(name, now);
			else this.#namesOnDisk.delete(name);
		}
	}

	#step(call: string, path: string, changes: boolean): void {
		this.trace.push(`${call} ${path}`);
		const { fault } = this;
		if (this.#isOff || (fault?.kind === 'cut' && this.calls >= fault.at)) {
			this.#isOff = true;
			throw new PowerCut();
		}
		if (fault?.kind !== 'errno' || !path.startsWith(fault.under ?? '')) return;
		if (this.calls === fault.at || (fault.forGood && changes && this.calls > fault.at))
			throw errno(fault.code, `${call} ${path}`);
	}
}
