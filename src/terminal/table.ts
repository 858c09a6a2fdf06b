import { cellsOf, padded, paddedBefore } from './width.ts';

/** Rows as columns two blanks apart, set in by two; `left` holds the columns that are not numbers, counted from 0. */
export function table(rows: readonly (readonly string[])[], left: readonly number[] = []): string[] {
	const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => cellsOf(row[column]!))));
	return rows.map((row) => {
		const cells = row.map((cell, i) => (left.includes(i) ? padded : paddedBefore)(cell, widths[i]!));
		return `  ${cells.join('  ')}`.trimEnd();
	});
}
