import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runLog } from '../../src/cli/log.ts';
import { isNotebookWord, runNotebook } from '../../src/cli/notebook.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { acquireLock, releaseLock } from '../../src/journal/lock.ts';
import { written } from '../helpers/cli/written.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';

let folder = '';
let here = '';
let there = '';
let stick = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'notebook-'));
	[here, there, stick] = ['here', 'there', 'stick'].map((name) => join(folder, name)) as [string, string, string];
});
afterEach(() => rmSync(folder, { recursive: true }));

function run(word: string, dir: string | null, home: string, json = false) {
	const { io, kept } = written();
	if (!isNotebookWord(word)) throw new RangeError(`"${word}" is done with no notebook.`);
	const code = runNotebook(word, dir, { home, json }, io);
	return { code, out: kept.out, document: json ? JSON.parse(kept.out) : null };
}

/** Changes one bit in the last line of a log. */
function spoil(path: string): void {
	const bytes = readFileSync(path);
	bytes[bytes.length - 40]! ^= 1;
	writeFileSync(path, bytes);
}

describe('the notebook', () => {
	it('says what was copied, what was there, what was left out, and ends with its code', () => {
		const ids = [1, 2, 3].map((day) => bendIn(here, { day, answers: 3 }).id);
		expect(run('export', stick, here)).toMatchObject({ code: 0, out: `Copied 3 sessions to ${stick}.\n` });
		spoil(join(stick, `${ids[1]}.log`));
		const taken = run('import', stick, there);
		expect(taken.code).toBe(6);
		expect(taken.out).toMatch(
			/^Copied 2 sessions from .*\nLeft out 1 session:\n {2}\S+-ab12\.log: .* is damaged in line/,
		);
		const { code, document } = run('import', stick, there, true);
		expect([code, document]).toMatchObject([
			6,
			{ added: [], longer: [], there: [ids[0], ids[2]], apart: [], leftOut: [{ code: 'log-damaged' }], stopped: null },
		]);
		expect(run('export', stick, here).out).toContain('Move the damaged one away and do this again.');
		expect(run('verify', null, there)).toMatchObject({ code: 0 });
		spoil(sessionPath(there, ids[0]!));
		expect(run('verify', null, there, true)).toMatchObject({
			code: 6,
			document: { sessions: 2, faults: [{ name: ids[0], code: 'log-damaged' }] },
		});
	});

	it('leaves a session at work alone, with its own exit code', () => {
		const { id } = bendIn(here, { day: 1, answers: 3 });
		run('export', stick, here);
		run('import', stick, there);
		const longer = bendIn(join(folder, 'again'), { day: 1, answers: 5 });
		writeFileSync(join(stick, `${id}.log`), readFileSync(longer.logPath));
		const lock = acquireLock(sessionPath(there, id), new Date());
		expect(run('import', stick, there).code).toBe(4);
		releaseLock(lock);
		expect(run('import', stick, there)).toMatchObject({ code: 0, out: expect.stringContaining('had gone on') });
	});

	it('asks for a folder where it needs one, and for one that is there', () => {
		expect(() => run('export', null, here)).toThrow('pullbook log export needs a folder');
		expect(() => run('import', stick, here)).toThrow(`There is no folder "${stick}" to import from.`);
		expect(() => run('verify', stick, here)).toThrow('takes no argument');
		expect(run('verify', null, here)).toMatchObject({ code: 0, out: expect.stringContaining('No session') });
	});

	it('marks what was imported in the list, and --resume does not take it unasked', async () => {
		const file = SAMPLE_JOBS[0]!;
		const left = await runLineMode({ file, home: here }, () => ({ quit: true }));
		expect(left.code).toBe(3);
		run('export', stick, here);
		run('import', stick, there);
		const { io, kept } = written();
		expect(await runLog({ id: null, json: true, home: there }, io)).toBe(0);
		const [listed] = JSON.parse(kept.out) as { id: string; imported?: boolean }[];
		expect(listed).toMatchObject({ imported: true });
		await expect(runLineMode({ file, home: there, resume: true }, () => ({ quit: true }))).rejects.toThrow(
			/No unfinished session/,
		);
		const named = await runLineMode({ file, home: there, resume: listed!.id }, () => ({ quit: true }));
		expect(named.code).toBe(3);
		expect((await runLineMode({ file, home: there, resume: true }, () => ({ quit: true }))).code).toBe(3);
	});
});
