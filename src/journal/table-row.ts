/** One kept session as a row of numbers, and the lists of what rows share that some of them point into. */
import type { SessionFigures } from '../session/report/figures.ts';
import { SESSION_STATUSES, type SessionStatus } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { JournalFault } from './facts.ts';
import { FIGURE_NUMBERS, figuresAt, putFigures } from './figure-numbers.ts';
import type { FoldedRow } from './folded-row.ts';
import { jointCount, jointFrom } from './joint-numbers.ts';
import type { JobNames, KeptRow, ListedOutcome } from './kept-row.ts';
import { LESSON_NUMBERS, lessonAt, putLesson } from './lesson-numbers.ts';
import type { Once } from './once.ts';
import type { FurtherDies, Odd, Texts } from './shared-texts.ts';

/** A row's numbers, in their order; then its figures', and its lesson's, all 0 without one. Places in a list are -1 for none. */
const [SIZE, MTIME, AT, TOUCHED, STATUS, DAMAGED, IMPORTED, JOB, LISTED, KIN, BESIDES] = [
	0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10,
];
/** What only the table as a whole knows: its place among what is odd, and where what several dies told together begins among the joint numbers. */
export const [ODD, JOINT] = [11, 12];
const FIGURES = JOINT + 1;
const LESSON = FIGURES + FIGURE_NUMBERS;
export const STRIDE = LESSON + LESSON_NUMBERS;

/** The memory that rows lie in. */
export interface RowTable {
	texts: Texts;
	numbers: Float64Array;
	/** What lessons of several dies told of them together, one after the other. */
	joint: Float64Array;
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

	/** Whether its log lies where its id says: no path is made for that, since each of thousands is asked. */
	get isInPlace(): boolean {
		return this.table.numbers[this.from + ODD]! < 0;
	}

	get path(): string {
		return this.odd?.path ?? ownPath(this.table.folder, this.id);
	}

	get job(): JobNames | null {
		return this.#inList(this.table.texts.jobs, JOB);
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
		return SESSION_STATUSES[this.#number(STATUS)] ?? 'open';
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
		const lesson = { kin, at: this.at, session: this.startId, ...told };
		const { besides, joint } = this;
		return besides.length === 0 ? lesson : { ...lesson, besides, ...jointFrom(joint, 1 + besides.length) };
	}

	/** What its lesson tells of several dies together; none of one die. */
	get joint(): Float64Array {
		const dies = this.besides.length === 0 ? 0 : 1 + this.besides.length;
		const at = this.#number(JOINT);
		return this.table.joint.subarray(at, at + jointCount(dies));
	}

	get besides(): FurtherDies {
		return this.#inList(this.table.texts.besides, BESIDES) ?? NO_FURTHER_DIE;
	}
}

/** One for all rows of one die: thousands are asked. */
const NO_FURTHER_DIE: FurtherDies = [];

/** Where a log lies that nothing is odd about; `folder` with the separator after it. */
export const ownPath = (folder: string, id: string) => `${folder}${id}.log`;
export const isoOf = (ms: number) => new Date(ms).toISOString();

/** The lists that rows point into, as they grow. */
export interface TableLists {
	jobs: Once<JobNames>;
	listed: Once<ListedOutcome>;
	kin: Once<Kin>;
	besides: Once<FurtherDies>;
}

/** A row's numbers. Times that are none of ours stand among what is odd. */
export function rowNumbers(
	{ row, size, mtimeMs }: FoldedRow,
	{ jobs, listed, kin, besides }: TableLists,
): Float64Array {
	const numbers = new Float64Array(STRIDE);
	numbers[SIZE] = size;
	numbers[MTIME] = mtimeMs;
	numbers[AT] = Date.parse(row.at);
	numbers[TOUCHED] = Date.parse(row.touched);
	numbers[STATUS] = SESSION_STATUSES.indexOf(row.status);
	numbers[DAMAGED] = Number(row.isDamaged);
	numbers[IMPORTED] = Number(row.isImported);
	numbers[JOB] = row.job ? jobs.of(row.job) : -1;
	numbers[LISTED] = row.listed ? listed.of(row.listed) : -1;
	numbers[KIN] = row.kin ? kin.of(row.kin) : -1;
	numbers[BESIDES] = row.besides.length > 0 ? besides.of(row.besides) : -1;
	putFigures(row.figures, numbers, FIGURES);
	if (row.lesson) putLesson(row.lesson, numbers, LESSON);
	return numbers;
}
