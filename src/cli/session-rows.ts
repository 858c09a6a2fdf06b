import { realPath } from '../journal/find.ts';
import type { KeptRow, ListedOutcome } from '../journal/kept-row.ts';
import type { SessionRow } from '../screen/home/home-port.ts';
import { localMinute } from '../words/local-time.ts';
import { searchedIn, searchedOutcome } from '../words/session-list.ts';
import { wallClock } from './wall-clock.ts';

/** Kept sessions as lists have them. */
export function sessionRows(kept: readonly KeptRow[]): readonly ListedSession[] {
	const shared: Shared = { paths: new Map(), outcomes: new Map() };
	return kept.map((row) => new ListedSession(row, shared));
}

/** What many sessions share, found so far. */
interface Shared {
	/** Real paths: looking one up takes the disk. */
	paths: Map<string, string>;
	/** What is searched of finished tubes that came to the same. */
	outcomes: Map<ListedOutcome, string>;
}

/** A kept session as lists have it. Each part is made when it is asked for: of thousands of sessions few are shown. */
export class ListedSession implements SessionRow {
	readonly kept: KeptRow;
	readonly #shared: Shared;
	#started: string | undefined;

	constructor(kept: KeptRow, shared: Shared) {
		this.kept = kept;
		this.#shared = shared;
	}

	get id(): string {
		return this.kept.id;
	}

	get job(): string {
		return this.kept.job?.name ?? this.kept.id;
	}

	get bender(): string | undefined {
		return this.kept.job?.bender;
	}

	get die(): string | undefined {
		return this.kept.job?.die;
	}

	get heat(): string | undefined {
		return this.kept.job?.heat;
	}

	get path(): string | undefined {
		const file = this.kept.job?.file;
		if (file === undefined) return undefined;
		return onceIn(this.#shared.paths, file, realPath);
	}

	get searched(): string {
		const { id } = this.kept;
		const names = this.kept.job;
		return searchedIn([id, names?.name ?? id, names?.bender, names?.die, names?.heat, this.#outcome]);
	}

	get #outcome(): string {
		const { status, listed, isImported } = this.kept;
		if (status !== 'done' || listed === null || isImported) return searchedOutcome(this);
		return onceIn(this.#shared.outcomes, listed, () => searchedOutcome(this));
	}

	get status(): SessionRow['status'] {
		return this.kept.problem === null ? this.kept.status : 'damaged';
	}

	get started(): string {
		this.#started ??= localMinute(this.kept.at, wallClock);
		return this.#started;
	}

	get imported(): boolean {
		return this.kept.isImported;
	}

	get fits(): boolean | null {
		return this.kept.listed?.fits ?? null;
	}

	get mayFit(): true | undefined {
		return this.kept.listed?.mayFit;
	}

	get bendsDone(): number {
		return this.kept.listed?.bendsDone ?? 0;
	}

	get bends(): number {
		return this.kept.listed?.bends ?? 0;
	}

	get quantity(): number | undefined {
		return this.kept.listed?.quantity;
	}

	get piece(): number | undefined {
		return this.kept.listed?.piece;
	}

	get simulated(): true | undefined {
		return this.kept.listed?.simulated;
	}

	get bentAs(): SessionRow['bentAs'] {
		return this.kept.listed?.bentAs;
	}
}

function onceIn<K, V>(known: Map<K, V>, key: K, found: (key: K) => V): V {
	const before = known.get(key);
	if (before !== undefined) return before;
	const value = found(key);
	known.set(key, value);
	return value;
}
