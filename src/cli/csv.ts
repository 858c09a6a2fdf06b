import { stringify } from 'csv-stringify/sync';
import type { CsvCell, CsvColumn } from '../review/csv-list.ts';
import { foreign } from '../words/foreign.ts';

/**
 * Comma-separated values (RFC 4180): a line of names, then a line a row, each ended by CR LF. Nothing to say is an empty field. A text that a
 * spreadsheet would take for a formula has ' before it.
 */
export function csvText<T>(columns: readonly CsvColumn<T>[], rows: readonly T[]): string {
	const lines = rows.map((row) => columns.map(([, of]) => csvValue(of(row))));
	return stringify([columns.map(([name]) => name), ...lines], { record_delimiter: 'windows', escape_formulas: true });
}

function csvValue(cell: CsvCell): string | number {
	if (typeof cell === 'number') return cell;
	return cell === null ? '' : foreign(String(cell));
}
