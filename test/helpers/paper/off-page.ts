import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PdfPage } from './pdf.ts';

/** What a printer cannot print, in points from the edge: a quarter of an inch. */
export const EDGE = 18;

/** ANSI/ASME Y14.1 size A, and ISO 216 A4, in points. */
const PAPERS = [
	[612, 792],
	[(210 * 72) / 25.4, (297 * 72) / 25.4],
] as const;

/** The texts of a page that do not stand whole on what a printer can print; of a page that has no paper's size, that. */
export function textsOff({ width, height, texts }: PdfPage): string[] {
	const isPaper = PAPERS.some(([wide, high]) => Math.abs(wide - width) < 0.1 && Math.abs(high - height) < 0.1);
	if (!isPaper) return [`a page of ${width} by ${height} points`];
	return texts.flatMap(({ text, x, y, width: long, size }) =>
		x < EDGE || x + long > width - EDGE || y - size < EDGE || y > height - EDGE ? [text] : [],
	);
}

/** Texts whose letters, from foot to head, lie in those of another. */
export function textsOnOneAnother({ texts }: PdfPage): string[] {
	const boxes = texts
		.filter(({ text }) => text.trim() !== '')
		.map(({ text, x, y, width, size }) => ({ text, left: x, right: x + width, top: y - 0.7 * size, bottom: y }));
	return boxes.flatMap((a, i) =>
		boxes
			.slice(i + 1)
			.filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
			.map((b) => `${a.text} | ${b.text}`),
	);
}

/** Whether pages can be drawn as a printer would (poppler-utils). */
export const hasPoppler = spawnSync('pdftoppm', ['-v']).error === undefined;

/** A page as it is drawn: a byte a dot, 0 black, row by row. */
export interface Picture {
	width: number;
	height: number;
	dots: Uint8Array;
}

/** All pages of a PDF as poppler draws them, so many dots to the inch. */
export function drawnPages(bytes: Uint8Array, dpi: number): Picture[] {
	const folder = mkdtempSync(join(tmpdir(), 'pullbook-drawn-'));
	try {
		writeFileSync(join(folder, 'pages.pdf'), bytes);
		execFileSync('pdftoppm', ['-r', `${dpi}`, '-gray', join(folder, 'pages.pdf'), join(folder, 'page')]);
		const names = readdirSync(folder).filter((name) => name.endsWith('.pgm'));
		return names.sort().map((name) => pictureIn(readFileSync(join(folder, name))));
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

/** Binary PGM of 8 bits. */
function pictureIn(file: Buffer): Picture {
	const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString('latin1', 0, 64))!;
	return { width: Number(width), height: Number(height), dots: file.subarray(head.length) };
}
