import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runPaper } from '../../src/cli/paper.ts';
import { runRecord } from '../../src/cli/paper-record.ts';
import { savePdf } from '../../src/cli/save-pdf.ts';
import { UsageError } from '../../src/cli/usage-error.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { written } from '../helpers/cli/written.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { readPdf } from '../helpers/paper/pdf.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

let folder = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'pullbook-paper-'));
	cpSync('jobs/bow-rail.json', join(folder, 'bow-rail.json'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const AS_DRAWN = { mirror: false, from: 'start' } as const;
const pdfs = () => readdirSync(folder).filter((name) => name !== 'bow-rail.json' && name !== 'sessions');

async function paper(options: Partial<Parameters<typeof runPaper>[0]> = {}) {
	const { io, kept } = written();
	const file = join(folder, 'bow-rail.json');
	const asked = { file, parts: null, page: null, out: null, force: false, home: folder, as: AS_DRAWN };
	const code = await runPaper({ ...asked, ...options }, io);
	return { code, ...kept };
}

describe('pullbook paper JOB', () => {
	it('writes the shop sheet beside the job and says where, but never over what is there', async () => {
		const { code, err } = await paper();
		expect([code, pdfs()]).toEqual([0, ['bow-rail-sheet.pdf']]);
		expect(err).toContain(join(folder, 'bow-rail-sheet.pdf'));
		const path = join(folder, 'bow-rail-sheet.pdf');
		expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
		writeFileSync(path, 'mine');
		await expect(paper()).rejects.toThrow(UsageError);
		expect(readFileSync(path, 'utf8')).toBe('mine');
		await paper({ force: true });
		expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
		expect(pdfs()).toEqual(['bow-rail-sheet.pdf']);
	});

	it('refuses a part and a sheet that there is not, and says which there are', async () => {
		await expect(paper({ parts: 'shadow' })).rejects.toThrow(/"shadow".*sheet, profile/);
		await expect(paper({ page: 'a3' })).rejects.toThrow('--page is letter or a4, not "a3".');
		expect(pdfs()).toEqual([]);
	});

	it('says why a folder that is not there takes no file, with exit code 5', async () => {
		const gone = paper({ out: join(folder, 'gone', 'sheet.pdf') });
		await expect(gone).rejects.toMatchObject({ exitCode: 5 });
		await expect(gone).rejects.toThrow('--out FILE');
		expect(pdfs()).toEqual([]);
	});
});

describe('a PDF on a disk that fails', () => {
	const bytes = new TextEncoder().encode('%PDF- a page');
	const calls = (() => {
		const fs = new FaultFs();
		savePdf('/sheet.pdf', bytes, false, fs);
		return fs.calls;
	})();

	it.each(['ENOSPC', 'EIO', 'EROFS'])('is there whole or not at all, wherever it says %s', (code) => {
		for (let at = 1; at <= calls; at++) {
			const fs = new FaultFs({ kind: 'errno', at, code, forGood: true });
			let refused: unknown = null;
			try {
				savePdf('/sheet.pdf', bytes, false, fs);
			} catch (error) {
				refused = error;
			}
			const after = fs.afterProcessEnd();
			if (after.files().includes('/sheet.pdf')) expect(after.readFileSync('/sheet.pdf')).toEqual(Buffer.from(bytes));
			else expect(refused).toMatchObject({ exitCode: 5 });
		}
	});
});

describe('pullbook paper ID', () => {
	const job = plainJob({
		name: 'Fender rail',
		tube: { ...plainJob().tube, heat: 'H 4711' },
		shape: byBends(
			[
				[20, 60, 0],
				[16, 35, 90],
			],
			14,
		),
		checks: [{ name: 'knee', kind: 'angle', between: [1, 2], tolerance: 0.5 }],
	});

	async function record(options: Parameters<typeof bendIn>[1], page: string | null = null) {
		const { id } = bendIn(folder, { job, ...options });
		const out = join(folder, 'record.pdf');
		const { io } = written();
		const code = await runRecord({ id, page, out, force: true, home: folder }, io);
		const pages = await readPdf(readFileSync(out));
		return { id, code, pages, text: pages.map(({ text }) => text).join('\n') };
	}

	it('tells what was made, every pull, and the log that it can be matched with', async () => {
		const { id, code, text, pages } = await record({ day: 3 });
		const log = readFileSync(sessionPath(folder, id));
		expect(code).toBe(0);
		for (const said of [id, 'H 4711', 'finished', 'knee', 'Every pull', createHash('sha256').update(log).digest('hex')])
			expect(text).toContain(said);
		const held = log
			.toString()
			.split('\n')
			.flatMap((line) => [...line.matchAll(/"of":"loaded","value":([\d.]+)/g)].map(([, value]) => value));
		expect(held.length).toBeGreaterThan(1);
		for (const value of held) expect(text).toContain(`${value}°`);
		expect(text).toContain(`page ${pages.length} of ${pages.length}`);
	});

	it('breaks no word and no length of its table on A4, the narrower paper', async () => {
		const [bends, last] = [[60, 50, 13].map((straight, i) => [straight, 40, 90 * i] as const), 14];
		const { pages } = await record({ day: 5, job: { ...job, shape: byBends(bends, last), checks: [] } }, 'a4');
		const { texts } = pages[0]!;
		for (const word of ['bend', 'mark drawn', 'mark set']) expect(texts.map(({ text }) => text)).toContain(word);
		const units = texts.filter(({ text, size }) => text === 'in' && size < 8);
		expect(units.length).toBeGreaterThanOrEqual(12);
		const before = (unit: (typeof texts)[number]) =>
			texts.some(
				({ text, x, y, width }) => /\d$/.test(text) && Math.abs(y - unit.y) < 1 && Math.abs(x + width - unit.x) < 4,
			);
		expect(units.filter((unit) => !before(unit))).toEqual([]);
	});

	it('of a session that was left says that it is not finished', async () => {
		const { code, text } = await record({ day: 4, answers: 4 });
		expect(code).toBe(0);
		expect(text).toContain('interrupted');
		expect(text).toContain('The tube is not finished.');
		expect(text).toContain('Bend 2 was not made.');
		expect(text).toContain('Check knee was not read.');
		expect(text).toContain('not read');
	});
});
