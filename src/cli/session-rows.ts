import { realPath } from '../journal/find.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import type { SessionRow } from '../screen/home/home-port.ts';
import type { SessionSummary } from '../session/report/views.ts';
import { localMinute } from '../words/local-time.ts';
import { wallClock } from './wall-clock.ts';

/** Kept sessions as lists have them. */
export function sessionRows(kept: readonly KeptRow[]): readonly ListedSession[] {
	const paths = new Map<string, string>();
	return kept.map((row) => new ListedSession(row, paths));
}

/** A kept session as lists have it. Each part is made when it is asked for: of thousands of sessions few are shown. */
export class ListedSession implements SessionRow {
	readonly kept: KeptRow;
	/** Real paths found so far: many sessions share a job file, and looking one up takes the disk. */
	readonly #paths: Map<string, string>;
	#summary: SessionSummary | null | undefined;
	#started: string | undefined;

	constructor(kept: KeptRow, paths: Map<string, string>) {
		this.kept = kept;
		this.#paths = paths;
	}

	get #told(): SessionSummary | null {
		if (this.#summary === undefined) this.#summary = this.kept.summary;
		return this.#summary;
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
		const real = this.#paths.get(file) ?? realPath(file);
		this.#paths.set(file, real);
		return real;
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
		return this.#told?.fits ?? null;
	}

	get mayFit(): true | undefined {
		return this.#told?.mayFit;
	}

	get bendsDone(): number {
		return this.#told?.bendsDone ?? 0;
	}

	get bends(): number {
		return this.#told?.bends ?? 0;
	}

	get quantity(): number | undefined {
		return this.#told?.quantity;
	}

	get piece(): number | undefined {
		return this.#told?.piece;
	}

	get simulated(): true | undefined {
		return this.#told?.simulated;
	}

	get bentAs(): SessionSummary['bentAs'] {
		return this.#told?.bentAs;
	}
}
