/** Rows of kept sessions as bytes and back. Numbers of lessons are 64-bit floats, for as text they take longer to read than a start may. */
import type { SessionStatus, SessionSummary } from '../session/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { KeptRow } from './kept-row.ts';

/** A row, and what the log looked like when it was folded. */
export interface CachedRow {
	row: KeptRow;
	size: number;
	mtimeMs: number;
}

type RowColumns = [
	id: string,
	size: number,
	mtimeMs: number,
	path: string,
	touched: string,
	status: SessionStatus,
	/** Number in `jobs`, when it began and under which id; null where that cannot be read. */
	begun: [job: number, at: string, id: string] | null,
	/** Number in `outcomes`; null without a summary. */
	outcome: number | null,
	problem: string | null,
	isDamaged: boolean,
	/** Number in `kin`; null without a lesson. */
	kin: number | null,
];

type JobNames = Pick<NonNullable<KeptRow['begun']>, 'job' | 'jobFile' | 'units'>;
type Outcome = Omit<SessionSummary, 'id' | 'job' | 'status' | 'started'>;

/** All but the numbers of lessons, as JSON; what many rows share stands there once. */
interface Columns {
	rows: RowColumns[];
	jobs: JobNames[];
	outcomes: Outcome[];
	kin: Kin[];
	/** The names of a lesson's tallies, in the order of their numbers. */
	tallies: string[];
	/** How many unknowns a lesson tells of. */
	unknowns: number;
}

const FLOAT = Float64Array.BYTES_PER_ELEMENT;

/** Length of the JSON in eight bytes, the JSON in UTF-8 filled up with spaces to a multiple of eight, the floats. */
export function encoded(cached: readonly CachedRow[]): Buffer {
	const once = { jobs: new Once<JobNames>(), outcomes: new Once<Outcome>(), kin: new Once<Kin>() };
	const lessons = cached.flatMap(({ row }) => row.lesson ?? []);
	const tallies = Object.keys(lessons[0]?.scatter ?? {}).sort();
	const unknowns = lessons[0]?.vector.length ?? 0;
	const rows = cached.map((each) => columnsOf(each, once));
	const shared = { jobs: once.jobs.all, outcomes: once.outcomes.all, kin: once.kin.all };
	const json = JSON.stringify({ rows, ...shared, tallies, unknowns } satisfies Columns);
	const text = Buffer.from(json + ' '.repeat(-Buffer.byteLength(json) & (FLOAT - 1)));
	const numbers = Float64Array.from(lessons.flatMap((lesson) => numbersOf(lesson, tallies, unknowns)));
	const length = Buffer.from(Float64Array.of(text.length).buffer);
	return Buffer.concat([length, text, Buffer.from(numbers.buffer)]);
}

/** Each distinct value once, by its number. */
class Once<T> {
	readonly all: T[] = [];
	readonly #known = new Map<string, number>();

	of(value: T): number {
		const key = JSON.stringify(value);
		const known = this.#known.get(key);
		if (known !== undefined) return known;
		this.#known.set(key, this.all.length);
		return this.all.push(value) - 1;
	}
}

interface Shared {
	jobs: Once<JobNames>;
	outcomes: Once<Outcome>;
	kin: Once<Kin>;
}

function columnsOf({ row, size, mtimeMs }: CachedRow, { jobs, outcomes, kin }: Shared): RowColumns {
	const { id, path, touched, begun, summary, problem, isDamaged, lesson } = row;
	return [
		id,
		size,
		mtimeMs,
		path,
		touched,
		row.status,
		begun && [jobs.of({ job: begun.job, jobFile: begun.jobFile, units: begun.units }), begun.at, begun.id],
		summary && outcomes.of(outcomeOf(summary)),
		problem,
		isDamaged,
		lesson && kin.of(lesson.kin),
	];
}

function outcomeOf({ id, job, status, started, ...outcome }: SessionSummary): Outcome {
	return outcome;
}

function numbersOf({ pulls, readings, vector, information, scatter }: Lesson, tallies: string[], unknowns: number) {
	const counts = tallies.flatMap((name) => {
		const { sum, count } = scatter[name as keyof Lesson['scatter']];
		return [sum, count];
	});
	const numbers = [pulls, readings, ...vector, ...information.flat(), ...counts];
	if (numbers.length === lengthOf(tallies, unknowns)) return numbers;
	throw new RangeError(`A lesson of ${numbers.length} numbers cannot be kept beside others of another length.`);
}

function lengthOf(tallies: readonly string[], unknowns: number): number {
	return 2 + unknowns + unknowns ** 2 + 2 * tallies.length;
}

/** The rows that `encoded` was given. The bytes must be as it made them: a checksum has to have said so. */
export function decoded(body: Uint8Array): CachedRow[] {
	// A copy, since floats must lie at a multiple of eight.
	const { buffer } = Uint8Array.from(body);
	const [length = 0] = new Float64Array(buffer, 0, 1);
	const columns = JSON.parse(Buffer.from(buffer, FLOAT, length).toString('utf8')) as Columns;
	const numbers = new Float64Array(buffer, FLOAT + length);
	let from = 0;
	return columns.rows.map((row) => {
		const has = row[10] !== null;
		const cached = rowIn(row, columns, has ? numbers.subarray(from) : null);
		if (has) from += lengthOf(columns.tallies, columns.unknowns);
		return cached;
	});
}

function rowIn(columns: RowColumns, shared: Columns, numbers: Float64Array | null): CachedRow {
	const { jobs, outcomes, kin, tallies, unknowns } = shared;
	const [id, size, mtimeMs, path, touched, status, started, outcome, problem, isDamaged, kinNumber] = columns;
	const begun = started && { ...jobs[started[0]]!, at: started[1], id: started[2] };
	const known = begun && { id: begun.id, job: begun.job, status, started: begun.at };
	const summary = known && outcome !== null ? { ...known, ...outcomes[outcome]! } : null;
	const about = begun && numbers && { kin: kin[kinNumber ?? 0]!, at: begun.at, session: begun.id };
	const lesson = about && { ...about, ...lessonIn(numbers, tallies, unknowns) };
	return { row: { id, path, begun, touched, status, summary, problem, isDamaged, lesson }, size, mtimeMs };
}

// Plain loops: this runs for every kept session at each start.
function lessonIn(numbers: Float64Array, tallies: readonly string[], unknowns: number) {
	let from = 0;
	const next = () => numbers[from++]!;
	const list = () => {
		const values: number[] = [];
		for (let i = 0; i < unknowns; i++) values.push(next());
		return values;
	};
	const [pulls, readings] = [next(), next()];
	const vector = list();
	const information: number[][] = [];
	for (let i = 0; i < unknowns; i++) information.push(list());
	const scatter: Record<string, { sum: number; count: number }> = {};
	for (const name of tallies) scatter[name] = { sum: next(), count: next() };
	return { pulls, readings, vector, information, scatter: scatter as unknown as Lesson['scatter'] };
}
