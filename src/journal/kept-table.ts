/**
 * Rows of kept sessions as bytes and back. Ten thousand rows as objects take longer to make than a session may take to begin: numbers lie in
 * one array, texts that many rows share stand once, and a row's parts are made when they are asked for.
 */

import { sep } from 'node:path';
import { sumOf } from '../maths/list.ts';
import type { FoldedRow } from './folded-row.ts';
import { jointNumbers } from './joint-numbers.ts';
import type { KeptRow } from './kept-row.ts';
import { Once } from './once.ts';
import type { Odd, Texts } from './shared-texts.ts';
import {
	isoOf,
	JOINT,
	ODD,
	ownPath,
	type RowTable,
	rowNumbers,
	STRIDE,
	type TableLists,
	TableRow,
} from './table-row.ts';

const FLOAT = Float64Array.BYTES_PER_ELEMENT;

/**
 * Four lengths in bytes as floats; ids, a line each; texts as JSON; spaces up to a multiple of eight; the rows' numbers; what lessons of several dies
 * have beyond those. All in one piece of memory that nothing else lies in, for there may be megabytes of it.
 */
export function encoded(rows: readonly FoldedRow[], folder: string): Uint8Array<ArrayBuffer> {
	const before = rows.find((row): row is TableRow => row instanceof TableRow)?.table;
	const lists: TableLists = {
		jobs: new Once(before?.texts.jobs ?? []),
		listed: new Once(before?.texts.listed ?? []),
		kin: new Once(before?.texts.kin ?? []),
		besides: new Once(before?.texts.besides ?? []),
	};
	const odd: Odd[] = [];
	const fresh = rows.map((folded) => (isRowOf(folded, before) ? null : rowNumbers(folded, lists)));
	const oddAt = rows.map(({ row }) => {
		const each = oddOf(row, folder);
		return each === null ? -1 : odd.push(each) - 1;
	});
	const ids = Buffer.from(rows.map(({ row }) => row.id).join('\n'));
	const joint = rows.map(({ row }) => jointIn(row));
	const { jobs, listed, kin, besides } = lists;
	const shared: Texts = { jobs: jobs.all, listed: listed.all, kin: kin.all, besides: besides.all, odd };
	const texts = Buffer.from(JSON.stringify(shared));
	const filling = -(ids.length + texts.length) & (FLOAT - 1);
	const numbersAt = HEAD_NUMBERS * FLOAT + ids.length + texts.length + filling;
	const rowBytes = rows.length * STRIDE * FLOAT;
	const jointBytes = sumOf(joint.map(({ length }) => length)) * FLOAT;
	const body = new Uint8Array(numbersAt + rowBytes + jointBytes).fill(SPACE, 0, numbersAt);
	new Float64Array(body.buffer, 0, HEAD_NUMBERS).set([ids.length, texts.length, filling, rowBytes]);
	body.set(ids, HEAD_NUMBERS * FLOAT);
	body.set(texts, HEAD_NUMBERS * FLOAT + ids.length);
	const numbers = new Float64Array(body.buffer, numbersAt);
	let jointAt = 0;
	for (const [n, folded] of rows.entries()) {
		numbers.set(fresh[n] ?? numbersIn(folded), n * STRIDE);
		numbers[n * STRIDE + ODD] = oddAt[n]!;
		numbers[n * STRIDE + JOINT] = jointAt;
		numbers.set(joint[n]!, rows.length * STRIDE + jointAt);
		jointAt += joint[n]!.length;
	}
	return body;
}

const HEAD_NUMBERS = 4;
const SPACE = 32;

function isRowOf(folded: FoldedRow, table: RowTable | undefined): folded is TableRow {
	return folded instanceof TableRow && folded.table === table;
}

function numbersIn(folded: FoldedRow): Float64Array {
	if (!(folded instanceof TableRow)) throw new TypeError('Only a row of a table has its numbers already.');
	return folded.table.numbers.subarray(folded.from, folded.from + STRIDE);
}

function jointIn(row: KeptRow): ArrayLike<number> {
	if (row instanceof TableRow) return row.joint;
	return row.lesson?.besides ? jointNumbers(row.lesson) : [];
}

function oddOf(row: KeptRow, folder: string): Odd | null {
	if (row instanceof TableRow) return row.odd;
	const { path, at, startId, touched, problem } = row;
	const isPlain = path === ownPath(folder, row.id) && startId === row.id && problem === null;
	return isPlain && isPlainTime(at) && isPlainTime(touched) ? null : { path, at, startId, touched, problem };
}

const isPlainTime = (text: string) => Number.isFinite(Date.parse(text)) && isoOf(Date.parse(text)) === text;

/**
 * The rows that `encoded` was given. The bytes must be as it made them: a checksum has to have said so; and they must begin at a multiple
 * of eight in their memory, which the rows go on using.
 */
export function decoded(body: Uint8Array, folder: string): FoldedRow[] {
	const { buffer, byteOffset, byteLength } = body;
	const [ids = 0, texts = 0, filling = 0, rowBytes = 0] = new Float64Array(buffer, byteOffset, HEAD_NUMBERS);
	const textsAt = HEAD_NUMBERS * FLOAT + ids;
	const numbersAt = textsAt + texts + filling;
	const jointAt = numbersAt + rowBytes;
	const text = (from: number, length: number, encoding: 'utf8' | 'latin1') =>
		Buffer.from(buffer, byteOffset + from, length).toString(encoding);
	const table: RowTable = {
		texts: JSON.parse(text(textsAt, texts, 'utf8')) as Texts,
		numbers: new Float64Array(buffer, byteOffset + numbersAt, rowBytes / FLOAT),
		joint: new Float64Array(buffer, byteOffset + jointAt, (byteLength - jointAt) / FLOAT),
		folder,
	};
	if (ids === 0) return [];
	// latin1: ids are letters and digits, and are read fastest so.
	return text(HEAD_NUMBERS * FLOAT, ids, 'latin1')
		.split('\n')
		.map((id, n) => new TableRow(id, table, n * STRIDE));
}

/** The folder as `decoded` and `encoded` want it. */
export const folderPrefix = (folder: string) => `${folder}${sep}`;
