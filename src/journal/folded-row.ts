import type { KeptRow } from './kept-row.ts';

/** A row, and what its log looked like when it was folded. */
export interface FoldedRow {
	readonly row: KeptRow;
	readonly size: number;
	readonly mtimeMs: number;
}
