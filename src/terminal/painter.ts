const BEGIN_UPDATE = '\x1b[?2026h';
const END_UPDATE = '\x1b[?2026l';
const CLEAR = '\x1b[H\x1b[2J';

/** What to write so that a screen which shows `before` shows `after`; `before` null: it shows anything. Lines are never too long. */
export function repaint(before: readonly string[] | null, after: readonly string[]): string {
	const rows = Math.max(before?.length ?? 0, after.length);
	const changes = Array.from({ length: rows }, (_, row) => {
		const text = after[row] ?? '';
		if (text === (before?.[row] ?? '')) return '';
		// Erased first: after a line as wide as the screen the cursor still stands on its last cell.
		return `\x1b[${row + 1};1H\x1b[K${text}`;
	}).join('');
	if (before !== null && changes === '') return '';
	return BEGIN_UPDATE + (before === null ? CLEAR : '') + changes + END_UPDATE;
}
