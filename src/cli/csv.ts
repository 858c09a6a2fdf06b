import { foreign } from '../words/foreign.ts';

/** Rows as comma-separated values (RFC 4180): lines end in CR LF, a field with a comma or a quote stands in quotes. */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
	return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number): string {
	const text = foreign(String(value));
	return /[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
