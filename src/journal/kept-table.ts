/**
 * Rows of kept sessions as bytes and back. Ten thousand rows as objects take longer to make than a session may take to begin: numbers lie in
 * one array, texts that many rows share stand once, and a row's parts are made when they are asked for.
 */
import { sep } from 'node:path';
import type { SessionStatus, SessionSummary } from '../session/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { JobNames, KeptRow } from './kept-row.ts';
import { LESSON_NUMBERS, lessonAt, putLesson } from './lesson-numbers.ts';

/** A row, and what its log looked like when it was folded. */
export interface FoldedRow {
	readonly row: KeptRow;
	readonly size: number;
	readonly mtimeMs: number;
}

/** A row's numbers, in their order; then its lesson's, all 0 without one. Numbers in a list are -1 for none. */
const [SIZE, MTIME, AT, TOUCHED, STATUS, DAMAGED, JOB, OUTCOME, KIN, LESSON] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
const STRIDE = LESSON + LESSON_NUMBERS;
const STATUSES: readonly SessionStatus[] = ['open', 'done', 'scrapped'];

type Outcome = Omit<SessionSummary, 'id' | 'job' | 'status' | 'started'>;
/** What of a row does not follow from its id and its numbers. */
type Odd = Pick<KeptRow, 'path' | 'at' | 'startId' | 'touched' | 'problem'>;

/** What many rows share; and by id, what few have. */
interface Texts {
	jobs: JobNames[];
	outcomes: Outcome[];
	kin: Kin[];
	odd: Record<string, Odd>;
}

interface Table {
	texts: Texts;
	numbers: Float64Array;
	/** The folder of the logs, with the separator after it. */
	folder: string;
}

class TableRow implements KeptRow, FoldedRow {
	readonly id: string;
	readonly table: Table;
	readonly from: number;

	constructor(id: string, table: Table, from: number) {
		this.id = id;
		this.table = table;
		this.from = from;
	}

	get row(): KeptRow {
		return this;
	}

	#number(which: number): number {
		return this.table.numbers[this.from + which]!;
	}

	get #odd(): Odd | undefined {
		return this.table.texts.odd[this.id];
	}

	get size(): number {
		return this.#number(SIZE);
	}

	get mtimeMs(): number {
		return this.#number(MTIME);
	}

	get path(): string {
		return this.#odd?.path ?? ownPath(this.table.folder, this.id);
	}

	get job(): JobNames | null {
		return this.table.texts.jobs[this.#number(JOB)] ?? null;
	}

	get at(): string {
		return this.#odd?.at ?? isoOf(this.#number(AT));
	}

	get startId(): string {
		return this.#odd?.startId ?? this.id;
	}

	get touched(): string {
		return this.#odd?.touched ?? isoOf(this.#number(TOUCHED));
	}

	get status(): SessionStatus {
		return STATUSES[this.#number(STATUS)] ?? 'open';
	}

	get summary(): SessionSummary | null {
		const { job } = this;
		const outcome = this.table.texts.outcomes[this.#number(OUTCOME)];
		if (job === null || outcome === undefined) return null;
		return { id: this.startId, job: job.name, status: this.status, started: this.at, ...outcome };
	}

	get problem(): string | null {
		return this.#odd?.problem ?? null;
	}

	get isDamaged(): boolean {
		return this.#number(DAMAGED) === 1;
	}

	get kin(): Kin | null {
		return this.table.texts.kin[this.#number(KIN)] ?? null;
	}

	get pulls(): number {
		return this.#number(LESSON);
	}

	get lesson(): Lesson | null {
		const { kin } = this;
		if (kin === null) return null;
		const told = lessonAt(this.table.numbers, this.from + LESSON);
		return { kin, at: this.at, session: this.startId, ...told };
	}
}

const ownPath = (folder: string, id: string) => `${folder}${id}.log`;
const isoOf = (ms: number) => new Date(ms).toISOString();
const isPlainTime = (text: string) => Number.isFinite(Date.parse(text)) && isoOf(Date.parse(text)) === text;

/** Each distinct value once, by its number. */
class Once<T> {
	readonly #numbers = new Map<string, number>();
	readonly all: T[];

	constructor(before: readonly T[]) {
		this.all = [...before];
		for (const [number, value] of before.entries()) this.#numbers.set(JSON.stringify(value), number);
	}

	of(value: T): number {
		const key = JSON.stringify(value);
		const known = this.#numbers.get(key);
		if (known !== undefined) return known;
		this.#numbers.set(key, this.all.length);
		return this.all.push(value) - 1;
	}
}

const FLOAT = Float64Array.BYTES_PER_ELEMENT;

/** Three lengths in bytes as floats; ids, a line each; texts as JSON; spaces up to a multiple of eight; the rows' numbers. */
export function encoded(rows: readonly FoldedRow[], folder: string): Buffer {
	const before = rows.find((row): row is TableRow => row instanceof TableRow)?.table;
	const jobs = new Once<JobNames>(before?.texts.jobs ?? []);
	const outcomes = new Once<Outcome>(before?.texts.outcomes ?? []);
	const kin = new Once<Kin>(before?.texts.kin ?? []);
	const odd: Record<string, Odd> = {};
	const numbers = new Float64Array(rows.length * STRIDE);
	for (const [n, folded] of rows.entries()) {
		const at = n * STRIDE;
		const { row } = folded;
		const oddly = oddOf(row, folder);
		if (oddly !== null) odd[row.id] = oddly;
		if (folded instanceof TableRow && folded.table === before) {
			numbers.set(before.numbers.subarray(folded.from, folded.from + STRIDE), at);
			continue;
		}
		const { summary, lesson } = row;
		numbers[at + SIZE] = folded.size;
		numbers[at + MTIME] = folded.mtimeMs;
		numbers[at + AT] = oddly ? 0 : Date.parse(row.at);
		numbers[at + TOUCHED] = oddly ? 0 : Date.parse(row.touched);
		numbers[at + STATUS] = STATUSES.indexOf(row.status);
		numbers[at + DAMAGED] = Number(row.isDamaged);
		numbers[at + JOB] = row.job ? jobs.of(row.job) : -1;
		numbers[at + OUTCOME] = summary ? outcomes.of(outcomeOf(summary)) : -1;
		numbers[at + KIN] = row.kin ? kin.of(row.kin) : -1;
		if (lesson) putLesson(lesson, numbers, at + LESSON);
	}
	const ids = Buffer.from(rows.map(({ row }) => row.id).join('\n'));
	const texts = Buffer.from(
		JSON.stringify({ jobs: jobs.all, outcomes: outcomes.all, kin: kin.all, odd } satisfies Texts),
	);
	const filling = Buffer.alloc(-(ids.length + texts.length) & (FLOAT - 1), ' ');
	const lengths = Buffer.from(Float64Array.of(ids.length, texts.length, filling.length).buffer);
	return Buffer.concat([lengths, ids, texts, filling, Buffer.from(numbers.buffer)]);
}

function oddOf(row: KeptRow, folder: string): Odd | null {
	if (row instanceof TableRow) return row.table.texts.odd[row.id] ?? null;
	const { path, at, startId, touched, problem } = row;
	const isPlain = path === ownPath(folder, row.id) && startId === row.id && problem === null;
	return isPlain && isPlainTime(at) && isPlainTime(touched) ? null : { path, at, startId, touched, problem };
}

function outcomeOf({ id, job, status, started, ...outcome }: SessionSummary): Outcome {
	return outcome;
}

/** The rows that `encoded` was given. The bytes must be as it made them: a checksum has to have said so. */
export function decoded(body: Uint8Array, folder: string): FoldedRow[] {
	// A copy, since floats must lie at a multiple of eight.
	const { buffer } = new Uint8Array(body);
	const [ids = 0, texts = 0, filling = 0] = new Float64Array(buffer, 0, 3);
	const idsAt = 3 * FLOAT;
	const table: Table = {
		texts: JSON.parse(Buffer.from(buffer, idsAt + ids, texts).toString('utf8')) as Texts,
		numbers: new Float64Array(buffer, idsAt + ids + texts + filling),
		folder,
	};
	// latin1: ids are letters and digits, and are read fastest so.
	const names = Buffer.from(buffer, idsAt, ids).toString('latin1').split('\n');
	return ids === 0 ? [] : names.map((id, n) => new TableRow(id, table, n * STRIDE));
}

/** The folder as `decoded` and `encoded` want it. */
export const folderPrefix = (folder: string) => `${folder}${sep}`;
