import { dirname } from 'node:path';
import { closeQuietly, removeQuietly, writeAll } from '../files/disk.ts';
import { causeOf } from '../files/error-codes.ts';
import type { Cause, WriteFault } from '../session/protocol/facts/not-saved.ts';
import { type AwayMark, copyAway, folderNoteOf, leaveMark } from './away.ts';
import { JournalError, LogLost, NotSaved, Overtaken } from './errors.ts';
import type { JournalNotice } from './facts.ts';
import { type Lock, lockNow, releaseLock } from './lock.ts';
import { parseLog } from './read-log.ts';
import { encodeRecord, type LogRecord } from './record.ts';
import type { WriterParts } from './writer-parts.ts';

/** The log that a session left for this one; `why` it could not be told of that yet, null where it was. */
export interface WentFrom {
	mark: AwayMark;
	why: Cause | null;
}

/**
 * The one writer of a log. `append` returns only when the record is on disk. The lines acknowledged are kept in memory as well, since
 * after a failed flush reading the file proves nothing.
 */
export class LogWriter {
	#path: string;
	#fd: number;
	#lock: Lock;
	readonly #lines: Buffer[];
	#size: number;
	/** Why no line can be added any more. */
	#over: JournalError | null = null;
	#isClosed = false;
	#from: WentFrom | null;
	readonly #parts: WriterParts;

	/** For createLog and openLog: `fd` is open for appending, `lines` are in it and durable, and `lock` is held. */
	constructor(
		{ path, fd, lock }: { path: string; fd: number; lock: Lock },
		lines: Buffer[],
		parts: WriterParts,
		from: WentFrom | null = null,
	) {
		this.#path = path;
		this.#fd = fd;
		this.#lock = lock;
		this.#lines = lines;
		this.#size = bytesIn(lines);
		this.#parts = parts;
		this.#from = from;
	}

	/** The file that is being written; another one after a rescue. */
	get path(): string {
		return this.#path;
	}

	/** Whether the session left another log for this one. */
	get isAway(): boolean {
		return this.#from !== null;
	}

	/** The folder in which the session goes on, where the log that it left could not be told of it; null otherwise. */
	get untoldFolder(): string | null {
		return this.#from === null || this.#from.why === null ? null : dirname(this.#path);
	}

	/** Where the session goes on now. */
	get wentOn(): JournalNotice {
		return { code: 'went-on-in', log: this.#path, unmarked: this.#from?.why ?? null };
	}

	/** Records acknowledged, and so the `seq` that the next one must have. */
	get count(): number {
		return this.#lines.length;
	}

	/** Bytes acknowledged. */
	get size(): number {
		return this.#size;
	}

	/** No line can be added here any more, whatever becomes of the disk. */
	get isOver(): boolean {
		return this.#over !== null;
	}

	/**
	 * Puts one record on disk. NotSaved: the log is as before, and the same record may be tried again. LogLost: this file is not written
	 * any more; `rescue` takes the session to a new one. Overtaken: another session has it. RangeError: not the next `seq`.
	 */
	append(record: LogRecord): void {
		if (this.#isClosed) throw new Error(`The log ${this.#path} is closed; nothing can be appended.`);
		if (record.seq !== this.count) throw new RangeError(`Record ${record.seq} cannot follow ${this.count - 1}.`);
		const line = encodeRecord(record);
		if (this.#over) throw this.#over;
		this.#checkOwn();
		this.#write(line);
		this.#flush();
		this.#lines.push(line);
		this.#size += line.length;
		this.#mark();
	}

	/**
	 * Goes on in a new file in `folder` (made if missing) with all acknowledged records. Throws NotSaved (`final`), after which another
	 * folder may be tried; Overtaken where another session has the log: what it wrote is never written over.
	 */
	rescue(folder: string): JournalNotice {
		if (this.#over instanceof Overtaken) throw this.#over;
		const made = copyAway(folder, this.#path, Buffer.concat(this.#lines), this.#parts);
		const mark = { log: this.#path, to: made.path };
		this.#from = { mark, why: leaveMark(mark, this.#parts) };
		this.#letGo();
		this.#path = made.path;
		this.#fd = made.fd;
		this.#lock = made.lock;
		this.#over = null;
		return this.wentOn;
	}

	/** Closes the file and gives the lock back. */
	close(): void {
		if (this.#isClosed) return;
		this.#isClosed = true;
		this.#mark();
		// All is here: nobody has to look elsewhere.
		if (this.#from === null) removeQuietly(this.#parts.fs, folderNoteOf(this.#path));
		this.#letGo();
	}

	/** The disk that refused may be well again: only then can its log be told where the session went on. */
	#mark(): void {
		if (this.#from !== null && this.#from.why !== null) this.#from.why = leaveMark(this.#from.mark, this.#parts);
	}

	#end<E extends JournalError>(error: E): E {
		this.#over = error;
		return error;
	}

	#lose(why: WriteFault, cause?: unknown): LogLost {
		return this.#end(new LogLost({ code: 'not-saved', log: this.#path, lines: this.count, again: false, why }, cause));
	}

	/**
	 * Is the lock still ours, and the file still the one under this name and as long as we left it? Else a line would go where nobody finds
	 * it, or between those of another session.
	 */
	#checkOwn(): void {
		const lock = this.#lockNow();
		if (lock === 'taken') throw this.#end(new Overtaken(this.#path, 'lock-taken'));
		const fault = this.#fileFault();
		if (fault !== null) {
			throw this.#goesOn() ? this.#end(new Overtaken(this.#path, 'lines-added')) : this.#lose(fault.why, fault.cause);
		}
		if (lock === 'gone') throw this.#end(new Overtaken(this.#path, 'lock-gone'));
	}

	#lockNow(): ReturnType<typeof lockNow> {
		try {
			return lockNow(this.#lock, this.#parts.fs);
		} catch (error) {
			throw error instanceof JournalError ? this.#notSaved(error.cause) : error;
		}
	}

	#fileFault(): { why: WriteFault; cause?: unknown } | null {
		const { fs } = this.#parts;
		try {
			const open = fs.fstatSync(this.#fd);
			const named = fs.statSync(this.#path);
			if (open.ino !== named.ino || open.dev !== named.dev) return { why: { code: 'replaced' } };
			if (open.size === this.#size) return null;
			return { why: { code: 'resized', is: open.size, was: this.#size } };
		} catch (cause) {
			return { why: { code: 'system', cause: causeOf(cause) }, cause };
		}
	}

	/** Whether under the log's name stands all that we wrote, and whole lines of another session after it or in another file. */
	#goesOn(): boolean {
		try {
			const file = this.#parts.fs.readFileSync(this.#path);
			const { size, damage, tail } = parseLog(file);
			const isOurs = file.subarray(0, this.#size).equals(Buffer.concat(this.#lines));
			return isOurs && damage === null && (size > this.#size || tail === null);
		} catch {
			// What cannot be read goes on nowhere: the fault of the file is told.
			return false;
		}
	}

	#write(line: Buffer): void {
		const { fs } = this.#parts;
		try {
			writeAll(fs, this.#fd, line);
		} catch (error) {
			this.#takeBack(error);
			throw this.#notSaved(error);
		}
	}

	/** The log is as it was before: the same line may be tried again. */
	#notSaved(error: unknown): NotSaved {
		const why: WriteFault = { code: 'system', cause: causeOf(error) };
		return new NotSaved({ code: 'not-saved', log: this.#path, lines: this.count, again: true, why }, error);
	}

	/** Takes what was half written out again; there is nothing to take where the disk has turned read-only. */
	#takeBack(error: unknown): void {
		const { fs } = this.#parts;
		try {
			if (fs.fstatSync(this.#fd).size === this.#size) return;
			fs.ftruncateSync(this.#fd, this.#size);
			fs.fdatasyncSync(this.#fd);
		} catch (second) {
			throw this.#lose({ code: 'half-written', cause: causeOf(error), second: causeOf(second) }, second);
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
			throw this.#lose({ code: 'system', cause: causeOf(error) }, error);
		}
	}

	#letGo(): void {
		closeQuietly(this.#parts.fs, this.#fd);
		releaseLock(this.#lock, this.#parts.fs);
	}
}

function bytesIn(lines: Buffer[]): number {
	return lines.reduce((sum, line) => sum + line.length, 0);
}
