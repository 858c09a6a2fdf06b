/** One kept session as a row of numbers, and the lists of what rows share that some of them point into. */
import type { SessionFigures } from '../session/report/figures.ts';
import type { SessionStatus } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { Units } from '../units/units.ts';
import type { JournalFault } from './facts.ts';
import { FIGURE_NUMBERS, figuresAt, putFigures } from './figure-numbers.ts';
import type { FoldedRow } from './folded-row.ts';
import type { JobNames, KeptRow, ListedOutcome } from './kept-row.ts';
import { LESSON_NUMBERS, lessonAt, putLesson } from './lesson-numbers.ts';
import type { Once } from './once.ts';
import type { Odd, Texts } from './shared-texts.ts';

/**
 * A row's numbers, in their order; then its figures', and its lesson's, all 0 without one. Places in a list are -1 for none; those from NAME to HEAT
 * are places of names.
 */
const [SIZE, MTIME, AT, TOUCHED, STATUS, DAMAGED, IMPORTED, LISTED, KIN] = [0, 1, 2, 3, 4, 5, 6, 7, 8];
/** Where its place among what is odd stands, which only the table as a whole knows. */
export const ODD = 9;
const [NAME, FILE, UNITS, BENDER, DIE, HEAT] = [10, 11, 12, 13, 14, 15];
const FIGURES = HEAT + 1;
const LESSON = FIGURES + FIGURE_NUMBERS;
export const STRIDE = LESSON + LESSON_NUMBERS;
const STATUSES: readonly SessionStatus[] = ['open', 'done', 'scrapped'];

/** The memory that rows lie in. */
export interface RowTable {
	texts: Texts;
	numbers: Float64Array;
	/** The folder of the logs, with the separator after it. */
	folder: string;
}

/** A row that lies in a table. Its parts are made when they are asked for. */
export class TableRow implements KeptRow, FoldedRow {
	readonly id: string;
	readonly table: RowTable;
	readonly from: number;

	constructor(id: string, table: RowTable, from: number) {
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

	get odd(): Odd | null {
		return this.#inList(this.table.texts.odd, ODD);
	}

	/** No list is asked for its place -1: that takes ten times as long. */
	#inList<T>(list: readonly T[], which: number): T | null {
		const place = this.#number(which);
		return place < 0 ? null : list[place]!;
	}

	get size(): number {
		return this.table.numbers[this.from + SIZE]!;
	}

	get mtimeMs(): number {
		return this.table.numbers[this.from + MTIME]!;
	}

	get path(): string {
		return this.odd?.path ?? ownPath(this.table.folder, this.id);
	}

	get job(): JobNames | null {
		// Of thousands of rows each is asked: no part of this is a call.
		const { numbers, texts } = this.table;
		const { names } = texts;
		const from = this.from;
		if (numbers[from + NAME]! < 0) return null;
		const name = names[numbers[from + NAME]!]!;
		const file = names[numbers[from + FILE]!]!;
		const units = names[numbers[from + UNITS]!] as Units;
		const bender = names[numbers[from + BENDER]!]!;
		const die = names[numbers[from + DIE]!]!;
		if (numbers[from + HEAT]! < 0) return { name, file, units, bender, die };
		return { name, file, units, bender, die, heat: names[numbers[from + HEAT]!]! };
	}

	get at(): string {
		return this.odd?.at ?? isoOf(this.#number(AT));
	}

	get startId(): string {
		return this.odd?.startId ?? this.id;
	}

	get touched(): string {
		return this.odd?.touched ?? isoOf(this.#number(TOUCHED));
	}

	get status(): SessionStatus {
		return STATUSES[this.#number(STATUS)] ?? 'open';
	}

	get listed(): ListedOutcome | null {
		return this.#inList(this.table.texts.listed, LISTED);
	}

	get problem(): JournalFault | null {
		return this.odd?.problem ?? null;
	}

	get isDamaged(): boolean {
		return this.#number(DAMAGED) === 1;
	}

	get isImported(): boolean {
		return this.#number(IMPORTED) === 1;
	}

	get kin(): Kin | null {
		return this.#inList(this.table.texts.kin, KIN);
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
		return { kin, at: this.at, session: this.startId, ...told, ...this.odd?.several };
	}

	get besides(): NonNullable<Lesson['besides']> {
		return this.odd?.several?.besides ?? [];
	}
}

/** Where a log lies that nothing is odd about; `folder` with the separator after it. */
export const ownPath = (folder: string, id: string) => `${folder}${id}.log`;
export const isoOf = (ms: number) => new Date(ms).toISOString();

/** The lists that rows point into, as they grow. */
export interface TableLists {
	names: Once<string>;
	listed: Once<ListedOutcome>;
	kin: Once<Kin>;
}

/** A row's numbers. Times that are none of ours stand among what is odd. */
export function rowNumbers({ row, size, mtimeMs }: FoldedRow, { names, listed, kin }: TableLists): Float64Array {
	const { job, lesson } = row;
	const numbers = new Float64Array(STRIDE);
	numbers[SIZE] = size;
	numbers[MTIME] = mtimeMs;
	numbers[AT] = Date.parse(row.at);
	numbers[TOUCHED] = Date.parse(row.touched);
	numbers[STATUS] = STATUSES.indexOf(row.status);
	numbers[DAMAGED] = Number(row.isDamaged);
	numbers[IMPORTED] = Number(row.isImported);
	numbers[LISTED] = row.listed ? listed.of(row.listed) : -1;
	numbers[KIN] = row.kin ? kin.of(row.kin) : -1;
	const named = [job?.name, job?.file, job?.units, job?.bender, job?.die, job?.heat];
	numbers.set(
		named.map((name) => (name === undefined ? -1 : names.of(name))),
		NAME,
	);
	putFigures(row.figures, numbers, FIGURES);
	if (lesson) putLesson(lesson, numbers, LESSON);
	return numbers;
}
