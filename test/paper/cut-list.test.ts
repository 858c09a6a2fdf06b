import { describe, expect, it } from 'vitest';
import type { CutOnPaper } from '../../src/paper/cut/cut-on-paper.ts';
import { PAPERS, printCutList } from '../../src/paper/index.ts';
import { type CutList, cutList } from '../../src/tube/cut-list.ts';
import { readPdf } from '../helpers/paper/pdf.ts';
import { readPaths } from '../helpers/paper/pdf-paths.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

/** Pieces of so many lengths, from sticks of 240 in without end. */
function of(lengths: readonly number[], quantity: number, name = (i: number) => `Rail ${i + 1}`): CutOnPaper {
	const pieces = lengths.map((length, i) => ({
		...{ length, wanted: quantity, finished: 0, begun: 0, scrapped: 0 },
		job: plainJob({ name: name(i) }),
	}));
	const sticks = [{ length: 240, count: Number.POSITIVE_INFINITY }];
	const list = cutList(pieces, sticks, { kerf: 0.125, asNow: false }) as CutList;
	return { tube: plainJob().tube, units: 'in', pieces, list, kerf: 0.125 };
}

const printed = (lists: readonly CutOnPaper[]) => printCutList({ lists, paper: PAPERS.letter, foot: 'a test' });

describe('the cut list on paper', () => {
	it('has each stick to scale with the marks of the saw on it', async () => {
		const one = of([70, 45.5], 2);
		const bytes = await printed([one]);
		const [page] = await readPaths(bytes);
		const bars = page!.filter(({ width, places }) => width === 0.8 && places.length === 5);
		expect(bars).toHaveLength(one.list!.sticks.length);
		const marks = page!.filter(({ width }) => width === 1.2).map(({ places }) => places[0]!);
		for (const [i, { places }] of bars.entries()) {
			const [left, right] = [Math.min(...places.map(([x]) => x)), Math.max(...places.map(([x]) => x))];
			const [top, low] = [Math.min(...places.map(([, y]) => y)), Math.max(...places.map(([, y]) => y))];
			const { cuts, length } = one.list!.sticks[i]!;
			const own = marks
				.filter(([, y]) => y > top - 1 && y < low + 1)
				.map(([x]) => ((x - left) / (right - left)) * length);
			expect(own).toHaveLength(cuts.length);
			for (const [k, at] of own.entries()) expect(at).toBeCloseTo(cuts[k]!.mark, 3);
		}
		const text = (await readPdf(bytes))[0]!.text;
		for (const words of ['Rail 1', '45 1/2', '240 long', 'The pieces weigh', 'No cutting takes less.'])
			expect(text).toContain(words);
	});

	it('goes on over as many pages as it takes, nothing of it past the margin, whatever the names', async () => {
		const name = (i: number) => `${'W'.repeat(70)} ${i} Поручень`;
		const lengths = Array.from({ length: 28 }, (_, i) => 121 + i);
		const pages = await readPdf(await printed([of(lengths, 1, name)]));
		expect(pages.length).toBeGreaterThan(1);
		for (const { texts, width, height } of pages)
			for (const { x, y, width: wide } of texts) {
				expect(x).toBeGreaterThanOrEqual(18);
				expect(x + wide).toBeLessThanOrEqual(width - 18);
				expect(y).toBeLessThan(height - 18);
			}
		// Each piece's letter stands on a stick, AB being the twenty-eighth.
		expect(pages.map(({ text }) => text).join('\n')).toContain('AB to');
	});

	it('has no heading of a table without a row of it, wherever the page ends', async () => {
		for (const first of [1, 2, 3, 4, 5]) {
			const lists = [first, 1, 1, 1, 1, 1].map((count, i) => {
				const list = of(
					Array.from({ length: count }, () => 70),
					1,
				);
				return { ...list, tube: { ...list.tube, wall: 0.05 + i / 100 } };
			});
			const pages = await readPdf(await printed(lists));
			expect(pages.length).toBeGreaterThan(1);
			for (const { text } of pages)
				expect(text.lastIndexOf('Rail')).toBeGreaterThan(text.lastIndexOf('lengths in inches'));
		}
	});

	it('says so where nothing is left to cut', async () => {
		const done = { ...of([70], 2), list: null };
		const [page] = await readPdf(await printed([{ ...done, pieces: [{ ...done.pieces[0]!, finished: 2 }] }]));
		expect(page!.text).toContain('Nothing is left to cut: 2 wanted, 2 finished.');
	});
});
