/**
 * Rows of kept sessions as bytes and back. Ten thousand rows as objects take longer to make than a session may take to begin: numbers lie in
 * one array, texts that many rows share stand once, and a row's parts are made when they are asked for.
 */
import { sep } from 'node:path';
import type { SessionFigures } from '../session/report/figures.ts';
import type { SessionStatus, SessionSummary } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { JournalFault } from './facts.ts';
import { FIGURE_NUMBERS, figuresAt, putFigures } from './figure-numbers.ts';
import type { FoldedRow } from './folded-row.ts';
import type { JobNames, KeptRow } from './kept-row.ts';
import { LESSON_NUMBERS, lessonAt, putLesson } from './lesson-numbers.ts';
import { Once } from './once.ts';
import { type ListedOutcome, type Odd, outcomeOf, summaryOf, type Texts } from './shared-texts.ts';

/** A row's numbers, in their order; then its figures', and its lesson's, all 0 without one. Numbers in a list are -1 for none. */
const [SIZE, MTIME, AT, TOUCHED, STATUS, DAMAGED, IMPORTED, JOB, OUTCOME, KIN] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
const FIGURES = KIN + 1;
const LESSON = FIGURES + FIGURE_NUMBERS;
const STRIDE = LESSON + LESSON_NUMBERS;
const STATUSES: readonly SessionStatus[] = ['open', 'done', 'scrapped'];

interface Table {
	texts: Texts;
	numbers: Float64Array;
	/** What few rows have, by id. */
	odd: ReadonlyMap<string, Odd>;
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
		return this.table.odd.get(this.id);
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
		return job === null || outcome === undefined ? null : summaryOf(this, job, outcome);
	}

	get problem(): JournalFault | null {
		return this.#odd?.problem ?? null;
	}

	get isDamaged(): boolean {
		return this.#number(DAMAGED) === 1;
	}

	get isImported(): boolean {
		return this.#number(IMPORTED) === 1;
	}

	get kin(): Kin | null {
		return this.table.texts.kin[this.#number(KIN)] ?? null;
	}

	get pulls(): number {
		return this.#number(LESSON);
	}

	get figures(): SessionFigures | null {
		return figuresAt(this.table.numbers, this.from + FIGURES);
	}

	get lesson(): Lesson | null {
		const { kin } = this;
		if (kin === null) return null;
		const told = lessonAt(this.table.numbers, this.from + LESSON);
		return { kin, at: this.at, session: this.startId, ...told, ...this.#odd?.several };
	}

	get besides(): NonNullable<Lesson['besides']> {
		return this.#odd?.several?.besides ?? [];
	}
}

const ownPath = (folder: string, id: string) => `${folder}${id}.log`;
const isoOf = (ms: number) => new Date(ms).toISOString();
const isPlainTime = (text: string) => Number.isFinite(Date.parse(text)) && isoOf(Date.parse(text)) === text;

const FLOAT = Float64Array.BYTES_PER_ELEMENT;

/** The lists that rows point into, as they grow. */
interface Lists {
	jobs: Once<JobNames>;
	outcomes: Once<ListedOutcome>;
	kin: Once<Kin>;
}

/**
 * Three lengths in bytes as floats; ids, a line each; texts as JSON; spaces up to a multiple of eight; the rows' numbers. All in one piece of
 * memory that nothing else lies in, for there may be megabytes of it.
 */
export function encoded(rows: readonly FoldedRow[], folder: string): Uint8Array<ArrayBuffer> {
	const before = rows.find((row): row is TableRow => row instanceof TableRow)?.table;
	const lists: Lists = {
		jobs: new Once(before?.texts.jobs ?? []),
		outcomes: new Once(before?.texts.outcomes ?? []),
		kin: new Once(before?.texts.kin ?? []),
	};
	const odd: Record<string, Odd> = {};
	for (const { row } of rows) {
		const oddly = oddOf(row, folder);
		if (oddly !== null) odd[row.id] = oddly;
	}
	const fresh = rows.map((folded) => (isOf(folded, before) ? null : numbersOf(folded, lists)));
	const ids = Buffer.from(rows.map(({ row }) => row.id).join('\n'));
	const { jobs, outcomes, kin } = lists;
	const texts = Buffer.from(
		JSON.stringify({ jobs: jobs.all, outcomes: outcomes.all, kin: kin.all, odd } satisfies Texts),
	);
	const filling = -(ids.length + texts.length) & (FLOAT - 1);
	const numbersAt = HEAD * FLOAT + ids.length + texts.length + filling;
	const body = new Uint8Array(numbersAt + rows.length * STRIDE * FLOAT).fill(SPACE, 0, numbersAt);
	new Float64Array(body.buffer, 0, HEAD).set([ids.length, texts.length, filling]);
	body.set(ids, HEAD * FLOAT);
	body.set(texts, HEAD * FLOAT + ids.length);
	const numbers = new Float64Array(body.buffer, numbersAt);
	for (const [n, folded] of rows.entries()) numbers.set(fresh[n] ?? numbersIn(folded), n * STRIDE);
	return body;
}

const HEAD = 3;
const SPACE = 32;

function isOf(folded: FoldedRow, table: Table | undefined): folded is TableRow {
	return folded instanceof TableRow && folded.table === table;
}

function numbersIn(folded: FoldedRow): Float64Array {
	if (!(folded instanceof TableRow)) throw new TypeError('Only a row of a table has its numbers already.');
	return folded.table.numbers.subarray(folded.from, folded.from + STRIDE);
}

/** A row's numbers. Times that are none of ours stand among what is odd. */
function numbersOf({ row, size, mtimeMs }: FoldedRow, { jobs, outcomes, kin }: Lists): Float64Array {
	const { summary, lesson } = row;
	const numbers = new Float64Array(STRIDE);
	numbers[SIZE] = size;
	numbers[MTIME] = mtimeMs;
	numbers[AT] = Date.parse(row.at);
	numbers[TOUCHED] = Date.parse(row.touched);
	numbers[STATUS] = STATUSES.indexOf(row.status);
	numbers[DAMAGED] = Number(row.isDamaged);
	numbers[IMPORTED] = Number(row.isImported);
	numbers[JOB] = row.job ? jobs.of(row.job) : -1;
	numbers[OUTCOME] = summary ? outcomes.of(outcomeOf(summary)) : -1;
	numbers[KIN] = row.kin ? kin.of(row.kin) : -1;
	putFigures(row.figures, numbers, FIGURES);
	if (lesson) putLesson(lesson, numbers, LESSON);
	return numbers;
}

function oddOf(row: KeptRow, folder: string): Odd | null {
	if (row instanceof TableRow) return row.table.odd.get(row.id) ?? null;
	const { path, at, startId, touched, problem, lesson } = row;
	const isPlain = path === ownPath(folder, row.id) && startId === row.id && problem === null;
	const odd = { path, at, startId, touched, problem };
	if (lesson?.besides) {
		const { besides, information, vector } = lesson;
		return { ...odd, several: { besides, information, vector } };
	}
	return isPlain && isPlainTime(at) && isPlainTime(touched) ? null : odd;
}

/**
 * The rows that `encoded` was given. The bytes must be as it made them: a checksum has to have said so; and they must begin at a multiple
 * of eight in their memory, which the rows go on using.
 */
export function decoded(body: Uint8Array, folder: string): FoldedRow[] {
	const { buffer, byteOffset, byteLength } = body;
	const [ids = 0, texts = 0, filling = 0] = new Float64Array(buffer, byteOffset, HEAD);
	const textsAt = HEAD * FLOAT + ids;
	const numbersAt = textsAt + texts + filling;
	const text = (from: number, length: number, encoding: 'utf8' | 'latin1') =>
		Buffer.from(buffer, byteOffset + from, length).toString(encoding);
	const shared = JSON.parse(text(textsAt, texts, 'utf8')) as Texts;
	const table: Table = {
		texts: shared,
		odd: new Map(Object.entries(shared.odd)),
		numbers: new Float64Array(buffer, byteOffset + numbersAt, (byteLength - numbersAt) / FLOAT),
		folder,
	};
	if (ids === 0) return [];
	// latin1: ids are letters and digits, and are read fastest so.
	return text(HEAD * FLOAT, ids, 'latin1')
		.split('\n')
		.map((id, n) => new TableRow(id, table, n * STRIDE));
}

/** The folder as `decoded` and `encoded` want it. */
export const folderPrefix = (folder: string) => `${folder}${sep}`;
