import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { csvText } from '../../src/cli/csv.ts';
import { runCut } from '../../src/cli/cut.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { written } from '../helpers/cli/written.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-cut-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** A job file of the plain job, its radius and so its cut length known: 20 + 20 - 2 x 6 + 6 x pi / 2 = 37.425 in. */
function jobFile(name: string, changes: object = {}): string {
	const file = join(home, `${name}.json`);
	const job = {
		pullbook: 'job/1',
		name,
		units: 'in',
		tube: { material: '1020-dom', od: 1.5, wall: 0.095 },
		tooling: { clr: 6, growth: 1 },
		shape: {
			points: [
				[0, 0],
				[20, 0],
				[20, 20],
			],
		},
		...changes,
	};
	writeFileSync(file, JSON.stringify(job));
	return file;
}
const LENGTH = 28 + 3 * Math.PI;

async function cut(files: string[], options: Partial<Parameters<typeof runCut>[0]> = {}) {
	const { io, kept } = written();
	const code = await runCut(
		{ files, stock: ['120'], kerf: null, asNow: false, form: 'text', pdf: null, home, ...options },
		io,
	);
	return { code, ...kept };
}
const cutJson = async (files: string[], options: Partial<Parameters<typeof runCut>[0]> = {}) => {
	const { code, out } = await cut(files, { ...options, form: 'json' });
	return { code, tubes: JSON.parse(out).tubes };
};

describe('pullbook cut', () => {
	it('prints where to saw', async () => {
		const { code, out } = await cut([jobFile('Fender rail', { quantity: 4 })]);
		expect(out).toBe(`Tube 1.5 x 0.095 1020-dom (lengths in inches)
  piece  job          cut length  wanted  to cut
  A      Fender rail     37 7/16       4       4

Hook the tape on the stick's end and leave it there. Draw every mark, write the
letter before it, and saw just beyond the mark. The saw takes 1/8 of the tube;
the marks allow for that.

  1  120 long: A to 37 7/16, A to 75, A to 112 1/2. 7 3/8 is left.
  2  120 long: A to 37 7/16. 82 7/16 is left.

2 sticks, 240 in all: 149 11/16 in pieces, 1/2 for the saw, 89 13/16 left over.
Waste 37.6 %. No cutting takes less.
The pieces weigh 17.8 lb, the sticks 28.5 lb.
`);
		expect(code).toBe(0);
	});

	it('gives the same as a document, unrounded', async () => {
		const { tubes } = await cutJson([jobFile('Fender rail', { quantity: 3 })], { kerf: '1/16' });
		expect(tubes).toHaveLength(1);
		expect(tubes[0]).toMatchObject({ units: 'in', kerf: 1 / 16, used: 120, proven: true, bound: 120, missing: 0 });
		expect(tubes[0].pieces).toMatchObject([{ piece: 'A', job: 'Fender rail', wanted: 3, toCut: 3 }]);
		expect(tubes[0].pieces[0].cutLength).toBeCloseTo(LENGTH, 9);
		const marks = tubes[0].sticks[0].cuts.map(({ mark }: { mark: number }) => mark);
		for (const [i, mark] of marks.entries()) expect(mark).toBeCloseTo((i + 1) * LENGTH + i / 16, 9);
		expect(tubes[0].waste).toBeCloseTo(120 - 3 * LENGTH, 9);
	});

	it('takes finished pieces and those being bent off the list, and cuts a scrapped one again', async () => {
		const job = plainJob();
		bendIn(home, { day: 1, job });
		bendIn(home, { day: 2, job, answers: 2 });
		const world = { home, program: 'test', now: () => new Date(Date.UTC(2026, 0, 3)), random: () => 'cd34' };
		const scrapped = LiveSession.begin(world, { job, path: '/none.json', raw: {} }, true, [], []);
		scrapped.answerText('{"scrap":"a dent"}');
		scrapped.close();
		const { tubes } = await cutJson([jobFile('Fender rail', { quantity: 4 })]);
		expect(tubes[0].pieces).toMatchObject([{ wanted: 4, finished: 1, begun: 1, scrapped: 1, toCut: 2 }]);
		// Four and a half feet hold one: the three that were cut, and two more.
		expect((await cutJson([join(home, 'Fender rail.json')], { stock: ['54x4'] })).tubes[0].missing).toBe(1);
		expect((await cutJson([join(home, 'Fender rail.json')], { stock: ['54x4'] })).code).toBe(1);
		expect((await cutJson([join(home, 'Fender rail.json')], { stock: ['54x2'], asNow: true })).tubes[0].missing).toBe(
			0,
		);
	});

	it('says that nothing is left to cut', async () => {
		bendIn(home, { day: 1, job: plainJob() });
		const { code, out } = await cut([jobFile('Fender rail')]);
		expect(out).toContain('Nothing is left to cut: 1 wanted, 1 finished.\n');
		expect(code).toBe(0);
	});

	it('never cuts two tubes from one stick, and reads each unit', async () => {
		const metric = {
			units: 'mm',
			tube: { material: '1020-dom', od: 38.1, wall: 2.413 },
			tooling: { clr: 152.4, growth: 1 },
		};
		const points = [
			[0, 0],
			[508, 0],
			[508, 508],
		];
		const files = [
			jobFile('Inch', {}),
			jobFile('Millimeter', { ...metric, shape: { points } }),
			jobFile('Thick', { tube: { material: '1020-dom', od: 1.5, wall: 0.12 } }),
		];
		const { tubes } = await cutJson(files, { stock: ['20 ft'] });
		expect(tubes.map(({ pieces }: { pieces: object[] }) => pieces.length)).toEqual([2, 1]);
		expect(tubes[0].pieces[1].cutLength).toBeCloseTo(LENGTH, 3);
		await expect(cut(files, { stock: ['240x3'] })).rejects.toThrow('These jobs are of 2 tubes');
	});

	it('says which log it could not read, and counts without it', async () => {
		bendIn(home, { day: 1, job: plainJob() });
		writeFileSync(sessionPath(home, '20260201-080000-zz'), 'nonsense\n');
		const { code, err } = await cut([jobFile('Fender rail', { quantity: 2 })]);
		expect(code).toBe(0);
		expect(err).toMatch(/^pullbook: 20260201-080000-zz: The log .* is damaged in line 1/);
	});

	it('takes all jobs of a folder, each once', async () => {
		const file = jobFile('Fender rail');
		jobFile('Other rail');
		expect((await cutJson([home, file])).tubes[0].pieces).toHaveLength(2);
	});

	it('takes the stick that the jobs name where none is given', async () => {
		const tube = { material: '1020-dom', od: 1.5, wall: 0.095, stock: 40 };
		expect((await cutJson([jobFile('Fender rail', { tube })], { stock: [] })).tubes[0].used).toBe(40);
		await expect(cut([jobFile('Other')], { stock: [] })).rejects.toThrow('Say how long the sticks of');
	});

	it.each([
		[['30'], 'No stick is long enough for Fender rail: it needs 37.425 in, the longest stick is 30 in.'],
		[['30q'], '--stock: "30q" cannot be read'],
		[['240x0'], 'Write 1 to 10000'],
		[['0'], '--stock: "0" comes to 0 in. Write '],
	])('refuses sticks %j with a sentence', async (stock, sentence) => {
		await expect(cut([jobFile('Fender rail')], { stock })).rejects.toThrow(sentence);
	});

	it('writes a PDF where it is told, and over nothing unless told', async () => {
		const out = join(home, 'list.pdf');
		const file = jobFile('Fender rail');
		const pdf = { out, page: null, force: false };
		const { code, out: printed, err } = await cut([file], { pdf });
		expect([code, printed, err]).toEqual([0, '', `pullbook: Written: ${out}\n`]);
		expect(readFileSync(out, 'latin1').slice(0, 5)).toBe('%PDF-');
		await expect(cut([file], { pdf })).rejects.toThrow('is there already');
		await expect(cut([file], { pdf: { ...pdf, page: 'legal' } })).rejects.toThrow('--page is letter or a4');
		expect((await cut([file], { pdf: { ...pdf, force: true } })).code).toBe(0);
		// A folder is in no way to be replaced, whoever says --force; nor is a device.
		await expect(cut([file], { pdf: { ...pdf, out: home, force: true } })).rejects.toThrow('is not a file that can be');
	});

	it('prints values apart by commas, a row a piece', async () => {
		const { out } = await cut([jobFile('Fender, "low"', { quantity: 2 })], { form: 'csv' });
		const lines = out.split('\r\n');
		expect(lines).toHaveLength(4);
		expect(lines[1]).toMatch(/^1020-dom,1\.5,0\.095,in,1,120,stick,A,"Fender, ""low""",37\.42\d*,37\.42\d*,44\.9\d*$/);
	});
});

describe('comma-separated values', () => {
	// RFC 4180, section 2, its own examples 5 to 7 (a line break in a field is written out here: a name is one line).
	it.each([
		[[['aaa', 'bbb', 'ccc']], 'aaa,bbb,ccc\r\n'],
		[[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
		[
			[
				['a,b', '1.5'],
				['', 'x'],
			],
			'"a,b",1.5\r\n,x\r\n',
		],
	])('%j', (rows, text) => {
		const [names = [], ...lines] = rows as (string | number)[][];
		const columns = names.map((name, i) => [String(name), (line: (string | number)[]) => line[i]!] as const);
		expect(csvText(columns, lines)).toBe(text);
	});
});
