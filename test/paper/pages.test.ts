import { describe, expect, it } from 'vitest';
import { PAPERS, printJob, usualPaper } from '../../src/paper/index.ts';
import { readPdf } from '../helpers/paper/pdf.ts';
import { onPaper } from '../helpers/shop/on-paper.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const sheet = async (name: string, page: 'letter' | 'a4' = 'letter') =>
	readPdf(await printJob(['sheet'], onPaper(plainJob({ name })), PAPERS[page]));

describe('paper', () => {
	// ANSI/ASME Y14.1: size A is 8.5 x 11 in. ISO 216: A4 is 210 x 297 mm.
	it.each([
		['letter', 612, 792],
		['a4', (210 * 72) / 25.4, (297 * 72) / 25.4],
	] as const)('%s has its size', async (page, width, height) => {
		const [first] = await sheet('Fender rail', page);
		expect(first!.width).toBeCloseTo(width, 1);
		expect(first!.height).toBeCloseTo(height, 1);
	});

	it('is Letter for inches and A4 for millimeters', () => {
		expect([usualPaper('in'), usualPaper('mm')]).toEqual(['letter', 'a4']);
	});

	it('has every font of it embedded, and each page its number', async () => {
		const pages = await sheet('Fender rail');
		expect(pages.flatMap(({ fonts }) => fonts)).not.toEqual([]);
		expect(pages.flatMap(({ fonts }) => fonts).filter(({ embedded }) => !embedded)).toEqual([]);
		expect(pages[0]!.text).toContain(`page 1 of ${pages.length}`);
	});

	it('can be read back after a page had its letter as a part of another alone', async () => {
		// The izhitsa with two graves is made of the bare one. No other test has either.
		await sheet('\u0477');
		const [page] = await sheet('\u0475');
		expect(page!.text).toContain('\u0475');
	});

	it.each([
		['Latin', 'Bügelgriff für Čeřen 3⅝', 'Bügelgriff für Čeřen 3⅝'],
		['Greek and Cyrillic', 'Κουπαστή Поручень', 'Κουπαστή Поручень'],
		['arrows', 'turn ↻ then → on', 'turn ↻ then → on'],
		['Chinese', '栏杆', '[U+680F 6746]'],
		['beyond 16 bits', 'rail 🚤', 'rail [U+1F6A4]'],
		['what acts on a reader', 'a\u202eb', 'a\\u202eb'],
	])('shows a name in %s so that each character can be read', async (_, name, shown) => {
		const [first] = await sheet(name);
		expect(first!.text).toContain(shown);
	});
});
