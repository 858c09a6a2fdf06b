import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runPaper } from '../../src/cli/paper.ts';
import { written } from '../helpers/cli/written.ts';
import { PROGRAM } from '../helpers/disk/program.ts';
import { type PdfPage, readPdf } from '../helpers/paper/pdf.ts';

/** Of every kind that is set in its own way: side by side, from right to left and joined, marks over letters, what the font lacks. */
const NAME = 'Rail ⅝ → Ü Поручень مسند اليد לחן e\u0301\u0302 栏杆';

/** A page without when it was printed, which is all that may differ. */
function untimed({ text, texts, ...page }: PdfPage) {
	const isTimed = (said: string) => said.startsWith('Printed ');
	expect(texts.filter((each) => isTimed(each.text))).toHaveLength(1);
	const lines = text.split('\n').filter((line) => !isTimed(line));
	return { ...page, lines, texts: texts.filter((each) => !isTimed(each.text)) };
}

// The build changes the packages that print, and takes tables out of the fonts: pages must come out as without.
it('the built program prints the pages that the packages print as they are', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'pullbook-built-'));
	try {
		const file = join(folder, 'rail.json');
		writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync('jobs/mast-brace.json', 'utf8')), name: NAME }));
		const [own, built] = [join(folder, 'own.pdf'), join(folder, 'built.pdf')];
		const options = { file, parts: 'sheet', page: 'a4', force: false, home: folder };
		await runPaper({ ...options, out: own, as: { mirror: false, from: 'start' } }, written().io);
		const args = ['paper', file, '--parts', 'sheet', '--page', 'a4', '--out', built, '--home', folder];
		const { status, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], { encoding: 'utf8' });
		expect([status, stderr]).toEqual([0, expect.stringContaining('built.pdf')]);
		const [wanted, found] = [await readPdf(readFileSync(own)), await readPdf(readFileSync(built))];
		expect(wanted[0]!.text).toContain('Поручень');
		expect(found.map(untimed)).toEqual(wanted.map(untimed));
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
});
