import { setFlagsFromString } from 'node:v8';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { type LogPlace, logPlaces, readAnyway } from './catalogue.ts';
import type { JournalFault } from './facts.ts';
import type { FoldedRow } from './folded-row.ts';
import { readCache, writeCache } from './kept-cache.ts';
import { type KeptRow, rowOf } from './kept-row.ts';
import { type FoundLogs, foundLogs, type Looks, looksOf } from './kept-rows.ts';

/** More than these are folded in little room rather than in the least time. */
const MANY = 1000;

/** What may be otherwise next time, although the log has not changed: such a row is not kept. */
const PASSING: ReadonlySet<JournalFault['code']> = new Set([
	'log-absent',
	'log-unreadable',
	'log-elsewhere',
	'logs-parted',
]);

/** What the kept sessions came to. */
export interface Kept {
	/** Newest first. */
	rows: readonly KeptRow[];
	/** How many are not among them, because time was up. */
	left: number;
}

/** Whether one more log may be folded, of the `remaining` that have to be. */
export type MayGoOn = (remaining: number) => boolean;

/** A rebuild that is cut short goes on near where it was: it saves after so many logs, as it gets on after this part of them, and at least so often. */
const SAVE = { every: 250, part: 0.25, ms: 5000 };

/**
 * The kept sessions of a home, each folded once: again only when its log has changed. What was folded is remembered by this object and
 * in a cache on disk, which nothing depends on.
 */
export class SessionCache {
	readonly #home: string;
	readonly #fs: FsPort;
	readonly #rescue: string | null;
	/** In the order of the logs, newest first. */
	#known: readonly FoldedRow[] | null = null;
	#canSave = true;

	/** `rescue`: a folder in which sessions went on that the home may not know of. */
	constructor(home: string, fs: FsPort = realFs, rescue: string | null = null) {
		this.#home = home;
		this.#fs = fs;
		this.#rescue = rescue;
	}

	/**
	 * The sessions as their logs are now, but the one with the id `apart`: a log that is about to go on is read for that, and has changed again
	 * by the next look. Throws JournalError when their folder cannot be read.
	 */
	read(mayGoOn: MayGoOn = () => true, apart: string | null = null): Kept {
		const { rows, left } = this.#read(mayGoOn, apart);
		return { rows: apart === null ? rows : rows.filter(({ id }) => id !== apart), left };
	}

	#read(mayGoOn: MayGoOn, apart: string | null): Kept {
		const places = logPlaces(this.#home, this.#fs, this.#rescue);
		const { here, changed, gone } = foundLogs(places, this.#remembered(), this.#fs);
		const wanted = changed.filter(({ place }) => place.id !== apart);
		// A row whose log is gone is in nobody's way until the cache is written for something else.
		if (wanted.length === 0 && gone <= SAVE.part * here.length) {
			this.#known = here;
			return { rows: here.map(({ row }) => row), left: 0 };
		}
		return this.#folded(places, { here, changed: wanted, gone }, mayGoOn);
	}

	/**
	 * Remembers a session that is just being left, so that the next start need not fold it; not where its log is of another size than
	 * what the row was made of, since something else then stands in it.
	 */
	keep(row: KeptRow, size: number): void {
		const facts = looksOf(row, this.#fs);
		if (facts?.size !== size) return;
		const folded = { row, size: facts.size, mtimeMs: facts.mtimeMs };
		const known = this.#remembered();
		const at = known.findIndex((each) => each.row.id === row.id);
		// A session that is new is the newest.
		this.#save(at === -1 ? [folded, ...known] : known.with(at, folded));
	}

	/** Folds what has changed, as long as it may. */
	#folded(places: readonly LogPlace[], { here, changed, gone }: FoundLogs, mayGoOn: MayGoOn): Kept {
		const known = byId(here);
		let unsaved = gone;
		let remaining = changed.length;
		let saved = performance.now();
		// Folding leaves much behind; with room for young objects that does not grow a third less memory is taken, for a third more time.
		if (remaining > MANY) setFlagsFromString('--semi-space-growth-factor=1');
		const save = () => {
			// Rows that were kept are taken back from what was written: thousands of them take far less room so.
			for (const folded of this.#save(places.flatMap(({ id }) => known.get(id) ?? [])))
				known.set(folded.row.id, folded);
			unsaved = 0;
			saved = performance.now();
		};
		const unkept = new Map<string, KeptRow>();
		const left = new Set<string>();
		for (const { place, facts } of changed) {
			if (!mayGoOn(remaining)) {
				left.add(place.id);
				continue;
			}
			remaining--;
			const folded = this.#fold(place, facts);
			if (folded.isKept) known.set(place.id, folded);
			else {
				known.delete(place.id);
				unkept.set(place.id, folded.row);
			}
			unsaved++;
			const isFew = unsaved < Math.max(SAVE.every, SAVE.part * known.size);
			if (!isFew || performance.now() - saved >= SAVE.ms) save();
		}
		if (unsaved > 0) save();
		const rowOfId = (id: string) => (left.has(id) ? undefined : (unkept.get(id) ?? known.get(id)?.row));
		return { rows: places.flatMap(({ id }) => rowOfId(id) ?? []), left: left.size };
	}

	#remembered(): readonly FoldedRow[] {
		this.#known ??= readCache(this.#home, this.#fs);
		return this.#known;
	}

	/** A log that could not be read is tried again next time; its row is not kept. */
	#fold({ id }: LogPlace, facts: Looks | null): FoldedRow & { isKept: boolean } {
		const session = readAnyway(this.#home, id, this.#fs, this.#rescue);
		const isRead = session.records.length > 0 && !(session.problem && PASSING.has(session.problem.code));
		return { row: rowOf(session), ...(facts ?? { size: 0, mtimeMs: 0 }), isKept: isRead && facts !== null };
	}

	/** Gives the rows as they are remembered from now on. */
	#save(rows: readonly FoldedRow[]): readonly FoldedRow[] {
		const kept = this.#canSave ? writeCache(this.#home, rows, this.#fs) : null;
		this.#canSave = kept !== null;
		this.#known = kept ?? rows;
		return this.#known;
	}
}

function byId(rows: readonly FoldedRow[]): Map<string, FoldedRow> {
	return new Map(rows.map((folded) => [folded.row.id, folded]));
}
