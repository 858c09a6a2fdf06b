import { setFlagsFromString } from 'node:v8';
import { codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { type LogPlace, logPlaces, readAnyway } from './catalogue.ts';
import type { JournalFault } from './facts.ts';
import type { FoldedRow } from './folded-row.ts';
import { readCache, writeCache } from './kept-cache.ts';
import { type KeptRow, rowOf } from './kept-row.ts';

/** More than these are folded in little room rather than in the least time. */
const MANY = 1000;

/** What tells a log that has changed. */
type Looks = Pick<FoldedRow, 'size' | 'mtimeMs'>;

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
	#known: Map<string, FoldedRow> | null = null;
	#canSave = true;

	/** `rescue`: a folder in which sessions went on that the home may not know of. */
	constructor(home: string, fs: FsPort = realFs, rescue: string | null = null) {
		this.#home = home;
		this.#fs = fs;
		this.#rescue = rescue;
	}

	/** The sessions as their logs are now. Throws JournalError when their folder cannot be read. */
	read(mayGoOn: MayGoOn = () => true): Kept {
		const places = logPlaces(this.#home, this.#fs, this.#rescue);
		let unsaved = this.#forgetAllBut(places);
		const changed = this.#changed(places);
		let remaining = changed.length;
		let saved = performance.now();
		// Folding leaves much behind; with room for young objects that does not grow a third less memory is taken, for a third more time.
		if (remaining > MANY) setFlagsFromString('--semi-space-growth-factor=1');
		const unkept = new Map<string, KeptRow>();
		const left = new Set<string>();
		for (const { place, facts } of changed) {
			if (!mayGoOn(remaining)) {
				left.add(place.id);
				continue;
			}
			remaining--;
			const row = this.#fold(place, facts);
			if (this.#known?.get(place.id)?.row !== row) unkept.set(place.id, row);
			unsaved++;
			const isFew = unsaved < Math.max(SAVE.every, SAVE.part * this.#remembered().size);
			if (isFew && performance.now() - saved < SAVE.ms) continue;
			this.#save();
			unsaved = 0;
			saved = performance.now();
		}
		if (unsaved > 0) this.#save();
		const rowOfId = (id: string) => (left.has(id) ? undefined : (unkept.get(id) ?? this.#known?.get(id)?.row));
		return { rows: places.flatMap(({ id }) => rowOfId(id) ?? []), left: left.size };
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

	/** The logs that do not look as they did when they were folded into the rows that are remembered. */
	#changed(places: readonly LogPlace[]): { place: LogPlace; facts: Looks | null }[] {
		const changed: { place: LogPlace; facts: Looks | null }[] = [];
		for (const place of places) {
			const facts = this.#facts(place);
			const known = this.#known?.get(place.id);
			if (facts === null || known === undefined || !isSame(known, facts, place)) changed.push({ place, facts });
		}
		return changed;
	}

	#remembered(): Map<string, FoldedRow> {
		this.#known ??= byId(readCache(this.#home, this.#fs));
		return this.#known;
	}

	/** What the log looks like before it is read: one that grows meanwhile is then seen to have changed. Null: no log there. */
	#facts({ path }: Pick<LogPlace, 'path'>): Looks | null {
		if (path === null) return null;
		try {
			// What the disk says has far more to it, and thousands of these are held on to.
			const { size, mtimeMs } = this.#fs.statSync(path);
			return { size, mtimeMs };
		} catch (error) {
			if (codeOf(error) === '') throw error;
			return null;
		}
	}

	/** A log that could not be read is tried again next time; its row is not kept. */
	#fold({ id }: LogPlace, facts: Looks | null): KeptRow {
		const session = readAnyway(this.#home, id, this.#fs, this.#rescue);
		const row = rowOf(session);
		this.#known?.delete(id);
		const isRead = session.records.length > 0 && !(session.problem && PASSING.has(session.problem.code));
		if (facts && isRead) this.#known?.set(id, { row, size: facts.size, mtimeMs: facts.mtimeMs });
		return row;
	}

	/** Rows that were kept are taken back from what was written: thousands of them take far less room so. */
	#save(): void {
		if (!this.#canSave) return;
		const kept = writeCache(this.#home, [...this.#remembered().values()], this.#fs);
		this.#canSave = kept !== null;
		if (kept !== null) this.#known = byId(kept);
	}
}

function byId(rows: readonly FoldedRow[]): Map<string, FoldedRow> {
	return new Map(rows.map((folded) => [folded.row.id, folded]));
}

function isSame({ row, size, mtimeMs }: FoldedRow, facts: Looks, { path, imported = false }: LogPlace): boolean {
	const looksSame = size === facts.size && mtimeMs === facts.mtimeMs;
	return looksSame && row.path === path && row.isImported === imported;
}
