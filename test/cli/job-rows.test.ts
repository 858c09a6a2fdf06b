import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { newestUnfinished } from '../../src/cli/bend.ts';
import { checkedRows, glancedRows } from '../../src/cli/job-rows.ts';
import { sessionRows } from '../../src/cli/session-rows.ts';
import { importMarkOf } from '../../src/journal/import-mark.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { leftOpen } from '../../src/screen/shell/opening.ts';
import { plainJobFile } from '../helpers/disk/job-file.ts';
import { runHere } from '../helpers/disk/run-here.ts';

let folder = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'job-rows-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const home = () => join(folder, 'home');

/** A job file of this name in a folder of its own. */
function jobIn(place: string, file: string, name: string): string {
	mkdirSync(join(folder, place), { recursive: true });
	const path = join(folder, place, file);
	writeFileSync(path, JSON.stringify({ ...plainJobFile(), name, quantity: 2 }));
	return path;
}

async function begun(path: string): Promise<string> {
	const { out } = await runHere(['bend', path, '--lines'], { home: home(), input: '{"ready":true}\n{"quit":true}\n' });
	return JSON.parse(out.split('\n')[0]!).id;
}

/** What the home screen lists of the jobs in that folder, at a glance and read through, which are to tell the same. */
function listedIn(place: string) {
	const sessions = sessionRows(new SessionCache(home()).read().rows);
	const jobs = { folder: join(folder, place), samples: false };
	const brief = glancedRows(jobs, sessions).map(({ open, latest, pieces }) => ({ open, latest: latest?.id, pieces }));
	const read = checkedRows(jobs, sessions, () => undefined);
	expect(read.map(({ open, latest, pieces }) => ({ open, latest: latest?.id, pieces }))).toEqual(brief);
	return { rows: brief, sessions };
}

it('a job has the sessions of its own file, and where there are none, those of its name, as --resume has them', async () => {
	const [first, moved] = [jobIn('first', 'a.json', 'Fender bar'), jobIn('moved', 'b.json', 'Fender bar')];
	jobIn('other', 'a.json', 'Other bar');
	const id = await begun(first);
	for (const path of [first, moved]) expect(newestUnfinished(home(), path, () => {})).toBe(id);
	const { rows, sessions } = listedIn('first');
	expect(rows).toEqual([{ open: id, latest: id, pieces: { next: 2, begun: 1, made: 0, scrapped: 0, wanted: 2 } }]);
	expect(listedIn('moved').rows).toEqual(rows);
	expect(listedIn('other').rows).toMatchObject([{ open: undefined, latest: undefined }]);
	expect(leftOpen({ jobPath: moved, jobName: 'Fender bar', resume: true }, () => sessions)).toBe(id);
	expect(leftOpen({ jobPath: moved, jobName: 'Other bar' }, () => sessions)).toBeNull();
	const own = await begun(moved);
	expect(listedIn('moved').rows).toMatchObject([{ open: own, latest: own }]);
	expect(listedIn('first').rows).toMatchObject([{ open: id, latest: id }]);
});

it('what was taken over from another bench is not offered to be gone on with', async () => {
	const path = jobIn('first', 'a.json', 'Fender bar');
	const id = await begun(path);
	writeFileSync(join(home(), 'sessions', importMarkOf(`${id}.log`)), '{}');
	const { rows, sessions } = listedIn('first');
	expect(rows).toMatchObject([{ open: undefined, latest: id }]);
	expect(leftOpen({ jobPath: path, jobName: 'Fender bar' }, () => sessions)).toBeNull();
});
