/** The rows of kept sessions as they are remembered, beside the logs as they lie now; without what reads and folds a log. */
import { codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { type LogPlace, logPlaces } from './catalogue.ts';
import type { FoldedRow } from './folded-row.ts';
import { readCache } from './kept-cache.ts';
import type { KeptRow } from './kept-row.ts';
import { TableRow } from './table-row.ts';

/** What tells a log that has changed. */
export type Looks = Pick<FoldedRow, 'size' | 'mtimeMs'>;

/** A log that is to be folded. */
export interface Changed {
	place: LogPlace;
	facts: Looks | null;
}

/** What a look at the logs found. */
export interface FoundLogs {
	/** The remembered rows whose logs are there, in the order of the logs. */
	here: readonly FoldedRow[];
	changed: readonly Changed[];
	/** How many were remembered that are there no longer. */
	gone: number;
}

/** The logs at these places beside what is remembered of them, which is mostly in the same order. */
export function foundLogs(places: readonly LogPlace[], known: readonly FoldedRow[], fs: FsPort): FoundLogs {
	const found = rowsAt(places, known);
	const here = found.filter((folded) => folded !== undefined);
	return { here, changed: changedAt(places, found, fs), gone: known.length - here.length };
}

/** The kept sessions of a home where all are remembered as their logs are; null where a log has to be folded. */
export function unchangedRows(home: string, fs: FsPort = realFs): readonly KeptRow[] | null {
	const { here, changed } = foundLogs(logPlaces(home, fs), readCache(home, fs), fs);
	return changed.length === 0 ? here.map(({ row }) => row) : null;
}

/** What the log looks like before it is read: one that grows meanwhile is then seen to have changed. Null: no log there. */
export function looksOf({ path }: Pick<LogPlace, 'path'>, fs: FsPort): Looks | null {
	if (path === null) return null;
	try {
		return fs.statSync(path);
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return null;
	}
}

/** The logs that do not look as they did when they were folded into the rows found for them. */
function changedAt(places: readonly LogPlace[], found: readonly (FoldedRow | undefined)[], fs: FsPort): Changed[] {
	const changed: Changed[] = [];
	places.forEach((place, n) => {
		const facts = looksOf(place, fs);
		const known = found[n];
		if (facts !== null && known !== undefined && isUnchanged(known, facts, place)) return;
		// What the disk says has far more to it, and thousands of these are held on to.
		changed.push({ place, facts: facts && { size: facts.size, mtimeMs: facts.mtimeMs } });
	});
	return changed;
}

/** Each place's row. Both mostly come in one order, and a map of thousands takes longer than to walk along them. */
function rowsAt(places: readonly LogPlace[], known: readonly FoldedRow[]): (FoldedRow | undefined)[] {
	let next = 0;
	let numbers: Map<string, number> | null = null;
	return places.map(({ id }) => {
		// A log that is gone is passed over.
		if (known[next]?.row.id !== id && known[next + 1]?.row.id === id) next++;
		if (known[next]?.row.id !== id) {
			numbers ??= new Map(known.map(({ row }, n) => [row.id, n]));
			const number = numbers.get(id);
			if (number === undefined) return undefined;
			next = number;
		}
		return known[next++];
	});
}

function isUnchanged(
	{ row, size, mtimeMs }: FoldedRow,
	facts: Looks,
	{ path, isOwn, imported = false }: LogPlace,
): boolean {
	const looksSame = size === facts.size && mtimeMs === facts.mtimeMs;
	if (!looksSame || row.isImported !== imported) return false;
	// Two paths, made anew for each of thousands, take longer to compare than all else.
	return (isOwn === true && row instanceof TableRow && row.isInPlace) || row.path === path;
}
