import { type LogPlace, logPlaces, readAnyway } from './catalogue.ts';
import { codeOf } from './errors.ts';
import { type FileFacts, type FsPort, realFs } from './fs-port.ts';
import { readCache, writeCache } from './kept-cache.ts';
import type { CachedRow } from './kept-code.ts';
import { type KeptRow, rowOf } from './kept-row.ts';

/** What the kept sessions came to. */
export interface Kept {
	/** Newest first. */
	rows: readonly KeptRow[];
	/** How many are not among them, because time was up. */
	left: number;
}

/** Whether one more log may be folded, of the `remaining` that have to be. */
export type MayGoOn = (remaining: number) => boolean;

/** A rebuild that is cut short goes on near where it was. */
const SAVE_EVERY = 250;

/**
 * The kept sessions of a home, each folded once: again only when its log has changed. What was folded is remembered by this object and
 * in a cache on disk, which nothing depends on.
 */
export class KeptSessions {
	readonly #home: string;
	readonly #fs: FsPort;
	#known: Map<string, CachedRow> | null = null;
	#canSave = true;

	constructor(home: string, fs: FsPort = realFs) {
		this.#home = home;
		this.#fs = fs;
	}

	/** The sessions as their logs are now. Throws JournalError when their folder cannot be read. */
	read(mayGoOn: MayGoOn = () => true): Kept {
		const places = logPlaces(this.#home, this.#fs);
		let unsaved = this.#forgetAllBut(places);
		const looked = places.map((place) => this.#look(place));
		let remaining = looked.filter(({ row }) => row === null).length;
		const rows: KeptRow[] = [];
		for (const { place, facts, row } of looked) {
			if (row !== null) rows.push(row);
			if (row !== null || !mayGoOn(remaining)) continue;
			remaining--;
			rows.push(this.#fold(place, facts));
			if (++unsaved % SAVE_EVERY === 0) this.#save();
		}
		if (unsaved % SAVE_EVERY !== 0) this.#save();
		return { rows, left: remaining };
	}

	/**
	 * Remembers a session that is just being left, so that the next start need not fold it; not where its log is of another size than
	 * what the row was made of, since something else then stands in it.
	 */
	keep(row: KeptRow, size: number): void {
		const facts = this.#facts(row);
		if (facts?.size !== size) return;
		this.#remembered().set(row.id, { row, size: facts.size, mtimeMs: facts.mtimeMs });
		this.#save();
	}

	/** How many were remembered that are there no longer. */
	#forgetAllBut(places: readonly LogPlace[]): number {
		const here = new Set(places.map(({ id }) => id));
		const known = this.#remembered();
		return [...known.keys()].filter((id) => !here.has(id) && known.delete(id)).length;
	}

	/** A log, and the row that it was folded into when it looked as it looks now. */
	#look(place: LogPlace): { place: LogPlace; facts: FileFacts | null; row: KeptRow | null } {
		const facts = this.#facts(place);
		const cached = this.#known?.get(place.id);
		return { place, facts, row: facts && cached && isSame(cached, facts, place) ? cached.row : null };
	}

	#remembered(): Map<string, CachedRow> {
		this.#known ??= new Map(readCache(this.#home, this.#fs).map((cached) => [cached.row.id, cached]));
		return this.#known;
	}

	/** What the log looks like before it is read: one that grows meanwhile is then seen to have changed. Null: no log there. */
	#facts({ path }: Pick<LogPlace, 'path'>): FileFacts | null {
		if (path === null) return null;
		try {
			return this.#fs.statSync(path);
		} catch (error) {
			if (codeOf(error) === '') throw error;
			return null;
		}
	}

	/** A log that could not be read is tried again next time; its row is not kept. */
	#fold({ id }: LogPlace, facts: FileFacts | null): KeptRow {
		const session = readAnyway(this.#home, id, this.#fs);
		const row = rowOf(session);
		this.#known?.delete(id);
		const isRead = session.records.length > 0;
		if (facts && isRead) this.#known?.set(id, { row, size: facts.size, mtimeMs: facts.mtimeMs });
		return row;
	}

	#save(): void {
		if (this.#canSave) this.#canSave = writeCache(this.#home, [...this.#remembered().values()], this.#fs);
	}
}

function isSame({ row, size, mtimeMs }: CachedRow, facts: FileFacts, { path }: LogPlace): boolean {
	return row.path === path && size === facts.size && mtimeMs === facts.mtimeMs;
}
