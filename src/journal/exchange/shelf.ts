/** A folder of logs that sessions are copied into: a home's own, or one that several homes share. */
import { basename, dirname, join, resolve } from 'node:path';
import { alone } from '../../files/alone.ts';
import { FOR_ALL, FOR_OWNER, makeFolder } from '../../files/disk.ts';
import type { FsPort } from '../../files/fs-port.ts';
import { replaceFile, sweepFolder, writeUnlessThere } from '../../files/whole-file.ts';
import { awayOf, isMarked, LOG_ENDING } from '../away.ts';
import { logName, sessionFolder } from '../catalogue.ts';
import { leaveImportMark } from '../import-mark.ts';
import { acquireLock, releaseLock } from '../lock.ts';
import type { WriterParts } from '../writer-parts.ts';

const SWEPT = { isSwept: true };

/** What a folder of logs asks of whoever writes in it. */
interface Rules {
	mode: number;
	/** Does this while nobody else writes the log. */
	alone<T>(log: string, does: () => T): T;
	/** Comes before each new log. */
	before(log: string): void;
	/** Whether logs here may have gone on in another place. */
	goesAway: boolean;
}

export class Shelf {
	readonly fs: FsPort;
	readonly #folder: string;
	readonly #rules: Rules;
	readonly #names = new Set<string>();
	/** Ids, and beginnings of ids, with the names that begin so. */
	readonly #byId = new Map<string, string[]>();

	private constructor(folder: string, rules: Rules, fs: FsPort) {
		this.#folder = folder;
		this.#rules = rules;
		this.fs = fs;
		makeFolder(fs, folder);
		sweepFolder(fs, folder, LOG_ENDING);
		this.look();
	}

	/** The logs of a home; what comes into it is marked as taken over from the folder `from`. Throws what the disk threw. */
	static ofHome(home: string, from: string, parts: WriterParts): Shelf {
		const { fs, now, self } = parts;
		const rules: Rules = {
			mode: FOR_OWNER,
			goesAway: true,
			before: (log) => leaveImportMark(log, { from: resolve(from), at: now.toISOString() }, fs),
			alone(log, does) {
				const lock = acquireLock(log, now, fs, self);
				try {
					return does();
				} finally {
					releaseLock(lock, fs);
				}
			},
		};
		return new Shelf(sessionFolder(home), rules, fs);
	}

	/** A folder that homes share: what one puts there the others can read. A lock left there by another machine goes stale by its age. */
	static shared(folder: string, { fs }: WriterParts): Shelf {
		const rules: Rules = {
			mode: FOR_ALL,
			goesAway: false,
			before: () => {},
			alone: (log, does) => alone(fs, log, does),
		};
		return new Shelf(resolve(folder), rules, fs);
	}

	/** Looks at the folder again: another program may have written there. */
	look(): void {
		for (const name of this.fs.readdirSync(this.#folder)) if (name.endsWith(LOG_ENDING)) this.#note(name);
	}

	/** The logs here of a session, and those that it went on in: its own, and with a number after it those that went on apart. */
	logsOf(id: string): string[] {
		const own = (this.#byId.get(id) ?? []).map((name) => join(this.#folder, name));
		if (!this.#rules.goesAway) return own;
		return [...new Set(own.flatMap((log) => [log, ...awayOf(log, null, this.fs)]))];
	}

	/** Whether a session left this log for another one, or this is that other one. */
	isAway(log: string): boolean {
		return this.#rules.goesAway && (dirname(log) !== this.#folder || isMarked(log, this.fs));
	}

	/** Writes a session's log under its own name, or the first free one with a number after it; null where another program took that. */
	add(id: string, bytes: Buffer): string | null {
		const log = join(this.#folder, this.#freeName(id));
		this.#rules.before(log);
		if (!writeUnlessThere(this.fs, log, bytes, this.#rules.mode, SWEPT)) return null;
		this.#note(basename(log));
		return log;
	}

	/** Writes a log anew, whole or not at all, where it is still as `isRight` wants it; false where it is not. `isNew`: it held no line. */
	replace(log: string, bytes: Buffer, isRight: () => boolean, isNew: boolean): boolean {
		return this.#rules.alone(log, () => {
			if (!isRight()) return false;
			if (isNew) this.#rules.before(log);
			replaceFile(this.fs, log, bytes, this.#rules.mode, SWEPT);
			return true;
		});
	}

	#freeName(id: string): string {
		const name = logName(id);
		if (!this.#names.has(name)) return name;
		for (let n = 2; ; n++) {
			const further = `${name.slice(0, -LOG_ENDING.length)}-${n}${LOG_ENDING}`;
			if (!this.#names.has(further)) return further;
		}
	}

	#note(name: string): void {
		if (this.#names.has(name)) return;
		this.#names.add(name);
		const stem = name.slice(0, -LOG_ENDING.length);
		for (const id of new Set([stem, stem.replace(/-\d+$/, '')])) {
			const names = this.#byId.get(id);
			if (names) names.push(name);
			else this.#byId.set(id, [name]);
		}
	}
}
