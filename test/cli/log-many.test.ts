import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { csvText } from '../../src/cli/csv.ts';
import { helpText } from '../../src/cli/help.ts';
import { runLog } from '../../src/cli/log.ts';
import { logRequest } from '../../src/cli/log-options.ts';
import { LIST_COLUMNS } from '../../src/review/csv-list.ts';
import { PULL_COLUMNS } from '../../src/review/csv-pulls.ts';
import { written } from '../helpers/cli/written.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const shape = { kind: 'bends', bends: [{ straight: 20, angle: 45, rotation: 0 }], last: 20 } as const;
const tube = { ...plainJob().tube, heat: 'H-77' };
const rail = plainJob({ name: 'Rescue rail, "low"', shape: { ...shape, bends: [...shape.bends] }, tube });
const brace = plainJob({ name: '=brace', shape: { ...shape, bends: [...shape.bends] }, tooling: { bender: 'yard' } });

let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-log-'));
	bendIn(home, { day: 1, job: rail, seed: 3 });
	bendIn(home, { day: 2, job: rail, seed: 3 });
	bendIn(home, { day: 3, job: brace, seed: 4, answers: 3 });
}, 60_000);
afterAll(() => rmSync(home, { recursive: true, force: true }));

const ids = ['20260103-080000-ab12', '20260102-080000-ab12', '20260101-080000-ab12'];

/** What the command prints, and its exit code. */
async function log(...args: string[]) {
	const { io, kept } = written();
	const code = await runLog({ ...logRequest(readCommandLine(['log', ...args])), home }, io);
	return { code, ...kept };
}
const listed = async (...args: string[]) => {
	const { out } = await log(...args, '--json');
	return (JSON.parse(out) as { id: string }[]).map(({ id }) => ids.indexOf(id));
};

describe('pullbook log with conditions', () => {
	it.each<[string[], number[]]>([
		[
			['--find', 'rail'],
			[1, 2],
		],
		[
			['--find', 'RESCUE h-77'],
			[1, 2],
		],
		[['--find', '20260103'], [0]],
		[['--find', 'rescue brace'], []],
		[
			['--since', '2026-01-02'],
			[0, 1],
		],
		[
			['--since', '2026-01'],
			[0, 1, 2],
		],
		[['--since', '2027'], []],
		[['--bender', 'YARD'], [0]],
		[['--bender', 'shop', '--since', '2026-01-02'], [1]],
		[['--fits', 'yes', '--find', 'brace'], []],
	])('%j', async (args, found) => {
		expect(await listed(...args)).toEqual(found);
	});

	it('--fits parts the finished ones, and leaves out what is not', async () => {
		const both = [...(await listed('--fits', 'yes')), ...(await listed('--fits', 'no'))];
		expect(both.sort()).toEqual([1, 2]);
	});

	it('says what to do where nothing is found, with exit code 0', async () => {
		const { code, out, err } = await log('--find', 'nothing');
		expect([code, err]).toEqual([0, '']);
		expect(out).toBe('No kept session is like that. Leave out a word or a condition; pullbook log lists them all.\n');
		expect((await log('--find', 'nothing', '--csv')).out.split('\r\n')).toHaveLength(2);
	});

	it.each([
		[['--fits', 'maybe'], '--fits takes yes or no, not "maybe". For example: --fits no'],
		[['--since', 'october'], '--since takes a day that there is, not "october". For example: --since 2026-10-01'],
		[['--since', '2026-02-30'], '--since takes a day that there is, not "2026-02-30".'],
		[['--bender', 'shed'], 'No kept session is of bender "shed". Benders with sessions: yard, shop.'],
		[['last', '--find', 'rail'], '--find narrow the list. Leave out "last", or leave out that.'],
		[['--json', '--csv'], 'Give one of them.'],
		[['last', 'last', '--csv'], 'For --csv give one ID.'],
		[['--trend', '--csv'], '--trend takes one job or bender, and --json.'],
		[['last', '--trend', 'shop'], '--trend takes one job or bender, and --json.'],
		[
			['--trend', 'shed'],
			'No kept session is of a job or bender "shed". Benders: yard, shop. Jobs: =brace, Rescue rail',
		],
		[['a', 'b', 'c'], 'pullbook log takes'],
	])('%j is not understood: says what would be, exit code 2', async (args, says) => {
		await expect(log(...args)).rejects.toMatchObject({ exitCode: 2, message: expect.stringContaining(says) });
	});
});

describe('comma-separated values, read by another reader', () => {
	const read = (text: string) => parse(text, { columns: true }) as Record<string, string>[];

	it('are a row a session, with the columns that help tables explains', async () => {
		const { code, out } = await log('--csv');
		expect(code).toBe(0);
		const rows = read(out);
		expect(rows.map(({ id }) => id)).toEqual(ids);
		expect(Object.keys(rows[0]!)).toEqual(LIST_COLUMNS.map(([name]) => name));
		expect(rows[1]).toMatchObject({ job: rail.name, status: 'done', bender: 'shop', heat: 'H-77', bends: '1' });
		expect(rows[1]).toMatchObject({ started: '2026-01-02T08:00:00.000Z', bends_done: '1' });
		expect(Number(rows[1]!.springback_45)).toBeGreaterThan(1);
		// What a spreadsheet would run is told apart; what is not known is empty.
		expect(rows[0]).toMatchObject({ job: "'=brace", status: 'open', fits: '', heat: '', error: '' });
	});

	it('are a row a pull of one session, as its document has them', async () => {
		const rows = read((await log('20260102', '--csv')).out);
		const { bends } = JSON.parse((await log('20260102', '--json')).out);
		expect(Object.keys(rows[0]!)).toEqual(PULL_COLUMNS.map(([name]) => name));
		expect(rows).toHaveLength(bends[0].pulls.length);
		for (const [i, pull] of bends[0].pulls.entries()) {
			expect(rows[i]).toMatchObject({ session: ids[1], bend: '1', pull: String(i + 1), line: String(pull.entry) });
			expect(Number(rows[i]!.held)).toBe(pull.loaded);
			expect(Number(rows[i]!.mark)).toBe(pull.mark.fromStart);
			expect(rows[i]!.measured).toBe(pull.measured.join(' '));
			expect(Number(rows[i]!.made)).toBe(bends[0].made.angle);
		}
	});

	it('keep commas, quotes and numbers below 0, and write out what acts on a terminal', () => {
		const columns = [['text', (text: string) => text] as const, ['number', () => -1.5] as const];
		const texts = ['a,b', 'say "so"', 'two\nlines', '\u001b[31m', ' blank ', ''];
		const rows = read(csvText(columns, texts));
		expect(rows.map(({ text }) => text)).toEqual(['a,b', 'say "so"', 'two\\nlines', '\\u001b[31m', ' blank ', '']);
		expect(rows.every(({ number }) => number === '-1.5')).toBe(true);
	});

	it('have every column in help tables, in their order', () => {
		const page = helpText('tables');
		for (const [head, columns] of [
			['pullbook log --csv', LIST_COLUMNS],
			['pullbook log ID --csv', PULL_COLUMNS],
		] as const) {
			const section = page.slice(page.indexOf(`\n${head}\n`) + 1).split('\n\n')[0]!;
			expect([...section.matchAll(/^ {2}(\w+) /gm)].map(([, name]) => name)).toEqual(columns.map(([name]) => name));
		}
	});
});

describe('pullbook log ID ID', () => {
	it('lays two sessions of one job side by side, the older first', async () => {
		const { code, out } = await log('last', '20260101').catch(({ message }) => ({ code: 2, out: message as string }));
		expect(code).toBe(2);
		expect(out).toBe(
			'These sessions are of two jobs, "=brace" and "Rescue rail, "low"". Give two of one job: pullbook log --find "=brace" lists them.',
		);
		const text = (await log('20260102', '20260101')).out;
		expect(text).toMatch(/20260101-080000-ab12 +20260102-080000-ab12\n/);
		for (const what of ['first stop', 'held at', 'springback', 'pulls', 'set-ups', 'made', 'far end off', 'fits'])
			expect(text).toMatch(new RegExp(`^ {2}${what} +\\S`, 'm'));
		expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
	});

	it('has the numbers of both documents in JSON', async () => {
		const { job, sessions, changed } = JSON.parse((await log('20260101', '20260102', '--json')).out);
		expect([job, changed]).toEqual([rail.name, []]);
		for (const [i, id] of [ids[2]!, ids[1]!].entries()) {
			const one = JSON.parse((await log(id, '--json')).out);
			const { held, stop, made, pulls, springback } = sessions[i].bends[0];
			const measured = one.bends[0].pulls.findLast((pull: { measured: number[] }) => pull.measured.length > 0);
			expect([held, stop, made]).toEqual([one.bends[0].pulls[0].loaded, one.bends[0].pulls[0].stop, one.bends[0].made]);
			expect(pulls).toBe(one.bends[0].pulls.length);
			const mean = measured.measured.reduce((sum: number, each: number) => sum + each, 0) / measured.measured.length;
			expect(springback).toBeCloseTo(measured.loaded - mean, 12);
			expect(sessions[i]).toMatchObject({ id, fits: one.asBuilt.fits, endOffset: one.asBuilt.endOffset });
		}
	});

	it('of an id that is not there says so, exit code 2', async () => {
		expect(await log('20260101', '2031')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('no log') });
	});
});

describe('pullbook log --trend', () => {
	it('without a name is of the bender of the newest session; a name is a bender or a job', async () => {
		expect((await log('--trend')).out).toMatch(/^Trend of bender yard, no session with a bend taken yet\n/);
		expect((await log('--trend', 'SHOP')).out).toMatch(/^Trend of bender shop, the newest 2 sessions\n/);
		expect((await log('--trend', rail.name)).out).toMatch(/^Trend of job Rescue rail, "low", the newest 2 sessions\n/);
		expect((await log('--trend', 'shop')).out).toContain('2 sessions tell what is usual. Limits need 8');
	});

	it('has the same in JSON', async () => {
		const document = JSON.parse((await log('--trend', 'shop', '--json')).out);
		expect(document).toMatchObject({ of: { bender: 'shop' }, sessions: 2, shift: null });
		expect(document.charts.error).toMatchObject({ usual: 2, limits: null });
	});
});
