import { basename, dirname, join, resolve } from 'node:path';
import { closeQuietly, createFile, createFreeFile, makeFolder, removeQuietly, writeAll } from '../files/disk.ts';
import { codeOf, reasonOf } from '../files/error-codes.ts';
import type { FsPort } from '../files/fs-port.ts';
import { LogLost, NotSaved } from './errors.ts';
import { acquireLock, type Lock, type LockSelf, releaseLock } from './lock.ts';
import { encodeRecord, type LogRecord } from './record.ts';

/** What a writer works with besides its file. */
export interface WriterParts {
	fs: FsPort;
	self: LockSelf;
	now: Date;
}

export interface Rescued {
	path: string;
	/** For the operator: where the session goes on now. */
	message: string;
}

/**
 * The one writer of a log. `append` returns only when the record is on disk. The lines acknowledged are kept in memory as well, since
 * after a failed flush reading the file proves nothing.
 */
export class LogWriter {
	#path: string;
	#fd: number;
	#lock: Lock;
	#lines: Buffer[];
	#size: number;
	#pending: Buffer | null = null;
	#lost: LogLost | null = null;
	#isClosed = false;
	readonly #parts: WriterParts;

	/** For createLog and openLog: `fd` is open for appending, `lines` are in it and durable, and `lock` is held. */
	constructor(path: string, fd: number, lock: Lock, lines: Buffer[], parts: WriterParts) {
		this.#path = path;
		this.#fd = fd;
		this.#lock = lock;
		this.#lines = lines;
		this.#size = sizeOf(lines);
		this.#parts = parts;
	}

	/** The file that is being written; another one after a rescue. */
	get path(): string {
		return this.#path;
	}

	/** Records acknowledged, and so the `seq` that the next one must have. */
	get count(): number {
		return this.#lines.length;
	}

	/** Bytes acknowledged. */
	get size(): number {
		return this.#size;
	}

	/**
	 * Puts one record on disk. NotSaved: the log is as before, and the same record may be tried again. LogLost: this file is not written
	 * any more; `rescue` takes the session, this record included, to a new one. RangeError: not the next `seq`.
	 */
	append(record: LogRecord): void {
		if (this.#isClosed) throw new Error(`The log ${this.#path} is closed; nothing can be appended.`);
		if (record.seq !== this.count) throw new RangeError(`Record ${record.seq} cannot follow ${this.count - 1}.`);
		const line = encodeRecord(record);
		this.#pending = line;
		if (this.#lost) throw this.#lost;
		this.#checkStands();
		this.#write(line);
		this.#flush();
		this.#acknowledge(line);
	}

	/**
	 * Goes on in a new file in `folder` (made if missing): all acknowledged records and the one whose append failed last. When this
	 * returns, that record is saved. Throws NotSaved (`final`); another folder may then be tried.
	 */
	rescue(folder: string): Rescued {
		const lines = this.#pending ? [...this.#lines, this.#pending] : this.#lines;
		const made = this.#newFile(folder, Buffer.concat(lines));
		const old = this.#path;
		const note = this.#leaveNote(old, made.path);
		this.#letGo();
		this.#path = made.path;
		this.#fd = made.fd;
		this.#lock = made.lock;
		this.#lines = lines;
		this.#size = sizeOf(lines);
		this.#pending = null;
		this.#lost = null;
		return { path: made.path, message: `The session goes on in ${made.path}, all readings included.${note}` };
	}

	/** Closes the file and gives the lock back. */
	close(): void {
		if (this.#isClosed) return;
		this.#isClosed = true;
		this.#letGo();
	}

	#newFile(folder: string, bytes: Buffer): { fd: number; path: string; lock: Lock } {
		const { fs, self, now } = this.#parts;
		try {
			makeFolder(fs, resolve(folder));
			// A name that once was gone on from is not taken again: the notes would lead in a circle.
			const names = { extension: '.log', beside: movedNote('') };
			const made = createFreeFile(fs, join(resolve(folder), basename(this.#path)), bytes, names);
			try {
				return { ...made, lock: acquireLock(made.path, now, fs, self) };
			} catch (error) {
				closeQuietly(fs, made.fd);
				removeQuietly(fs, made.path);
				throw error;
			}
		} catch (error) {
			throw notRescued(folder, error);
		}
	}

	/** Says beside the old log where the session went; a sentence for the operator when even that cannot be written. */
	#leaveNote(old: string, movedTo: string): string {
		const { fs, now } = this.#parts;
		// The old name is free when its folder has vanished, and then it needs no note.
		if (resolve(old) === movedTo) return '';
		try {
			const note = encodeRecord({ seq: 0, v: 1, at: now.toISOString(), movedTo });
			// One that was cut short would not have been followed, and so may go.
			removeQuietly(fs, movedNote(old));
			closeQuietly(fs, createFile(fs, movedNote(old), note));
			return '';
		} catch (error) {
			return ` Note that name: ${dirname(old)} could not be told of it (${reasonOf(error)}).`;
		}
	}

	#acknowledge(line: Buffer): void {
		this.#lines.push(line);
		this.#size += line.length;
		this.#pending = null;
	}

	#lose(why: string, cause?: unknown): LogLost {
		const what = `The log ${this.#path} can take no more: ${why}. This reading is not saved.`;
		this.#lost = new LogLost(`${what} The ${this.count} lines before it are safe.`, cause);
		return this.#lost;
	}

	/** Is the file still the one under this name, and as long as we left it? Else a write would go where nobody finds it. */
	#checkStands(): void {
		const { fs } = this.#parts;
		let why: string | null = null;
		try {
			const open = fs.fstatSync(this.#fd);
			const named = fs.statSync(this.#path);
			if (open.ino !== named.ino || open.dev !== named.dev) why = 'another file has been put in its place';
			else if (open.size !== this.#size)
				why = `its size is ${open.size} bytes where ${this.#size} were written, so something else has changed it`;
		} catch (error) {
			throw this.#lose(reasonOf(error), error);
		}
		if (why) throw this.#lose(why);
	}

	#write(line: Buffer): void {
		const { fs } = this.#parts;
		try {
			writeAll(fs, this.#fd, line);
		} catch (error) {
			try {
				fs.ftruncateSync(this.#fd, this.#size);
				fs.fdatasyncSync(this.#fd);
			} catch (second) {
				throw this.#lose(
					`${reasonOf(error)}, and what was half written cannot be taken back: ${reasonOf(second)}`,
					second,
				);
			}
			const next =
				codeOf(error) === 'ENOSPC' ? 'Make room on the disk and give it again' : 'Give it again when the disk is well';
			throw new NotSaved(`This reading is not saved in ${this.#path}: ${reasonOf(error)}. ${next}.`, error);
		}
	}

	#flush(): void {
		const { fs } = this.#parts;
		try {
			fs.fdatasyncSync(this.#fd);
		} catch (error) {
			try {
				// Whether the line reached the disk cannot be known. Take it out, lest a resume find a reading that was called not saved.
				fs.ftruncateSync(this.#fd, this.#size);
			} catch {
				// The file is given up in any case; the flush's error is the one to report.
			}
			throw this.#lose(reasonOf(error), error);
		}
	}

	#letGo(): void {
		closeQuietly(this.#parts.fs, this.#fd);
		releaseLock(this.#lock, this.#parts.fs);
	}
}

function sizeOf(lines: Buffer[]): number {
	return lines.reduce((sum, line) => sum + line.length, 0);
}

function notRescued(folder: string, error: unknown): NotSaved {
	const what = `This reading is not saved: no new log could be written in ${folder}, ${reasonOf(error)}.`;
	return new NotSaved(`${what} Write it down, and resume when there is a disk to write to.`, error, true);
}

/** The file beside a log that names the one in which its session goes on: itself a log, of one record. */
export function movedNote(log: string): string {
	return `${log}.moved`;
}
