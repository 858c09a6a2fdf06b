import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkedRows, glancedRows } from '../../src/cli/job-rows.ts';
import { loadJob, rawJob } from '../../src/job/load.ts';
import { plainJobFile } from '../helpers/disk/job-file.ts';
import { toldRefusal } from '../helpers/disk/told-faults.ts';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'pullbook-hostile-'));
	for (const [name, text] of Object.entries(TEXTS)) writeFileSync(join(folder, name), text);
	mkdirSync(join(folder, 'folder.json'));
	execFileSync('mkfifo', [join(folder, 'pipe.json')]);
	writeFileSync(join(folder, 'sound.json'), JSON.stringify(plainJobFile()));
});
afterAll(() => rmSync(folder, { recursive: true }));

const file = (more: object) => JSON.stringify({ ...plainJobFile(), ...more });
const keys = (count: number, key: (i: number) => string) =>
	`{${Array.from({ length: count }, (_, i) => `${key(i)}:1`).join(',')}}`;

/** What came by mail, or from another program. */
const TEXTS: Readonly<Record<string, string>> = {
	'brackets.json': file({ trim: { start: `${'('.repeat(5000)}1${')'.repeat(5000)}` } }),
	'nested.json': '['.repeat(400_000),
	'name.json': file({ name: 'x'.repeat(900_000) }),
	'key.json': `{${JSON.stringify('k'.repeat(900_000))}:1}`,
	'keys.json': keys(90_000, (i) => `"k${i}"`),
	'twice.json': keys(150_000, () => '"k"'),
	'checks.json': file({
		checks: Array.from({ length: 100 }, () => ({ name: 'x'.repeat(5000), ovality: { bend: 1e9 } })),
	}),
	'points.json': file({ shape: { points: Array.from({ length: 202 }, () => ['('.repeat(900), null]) } }),
	'large.json': ' '.repeat(1_000_001),
	'empty.json': '',
	'bytes.json': '\u0000\ufffd\u0001',
	'escapes.json': file({ name: 'a\u001b]52;c;eA\u0007' }),
};

/** The fault of a file, with how long it took to be found in ms. */
function faultOf(path: string) {
	const start = performance.now();
	const told = toldRefusal(() => loadJob(path));
	return { ...told, took: performance.now() - start };
}

const HOSTILE = [...Object.keys(TEXTS), 'folder.json', 'pipe.json'];

describe('a file that is no job', () => {
	it.each(HOSTILE)('%s is refused at once, in a message that names it and can be read', (name) => {
		const path = join(folder, name);
		const { message, faults, took } = faultOf(path);
		expect(message).toMatch(new RegExp(`${name}: \\d+ fault`));
		expect(message.length).toBeLessThan(100_000);
		expect(faults.length).toBeLessThan(210);
		// Far more than it takes; a walk over the text for each fault would take minutes.
		expect(took).toBeLessThan(8000);
	});

	it('is found out by what it is', () => {
		const found = (path: string) => faultOf(path).faults[0]?.found;
		expect(found(join(folder, 'pipe.json'))).toBe('a pipe');
		expect(found(join(folder, 'folder.json'))).toBe('a folder');
		expect(found('/dev/zero')).toBe('a device or a socket');
		expect(found(join(folder, 'large.json'))).toBe('more than 1 MB');
		expect(toldRefusal(() => rawJob(join(folder, 'pipe.json'))).message).toContain('a pipe');
	});

	it('says how many faults more there are than it tells', () => {
		const { faults } = faultOf(join(folder, 'keys.json'));
		expect(faults.at(-1)).toMatchObject({ at: 'job', found: expect.stringMatching(/^8\d{4} more faults$/) });
		expect(faultOf(join(folder, 'twice.json')).faults.some(({ found }) => /^149\d{3} more/.test(found))).toBe(true);
	});

	it('is one row of the list that says so, beside the others', () => {
		const listed = { folder, samples: false };
		const names = (rows: readonly { path: string }[]) => rows.map(({ path }) => basename(path));
		const glanced = glancedRows(listed, []);
		const checked = checkedRows(listed, [], () => undefined);
		expect(names(glanced)).toEqual([...HOSTILE, 'sound.json'].sort());
		expect(names(checked)).toEqual(names(glanced));
		for (const { path, name, faults } of checked) {
			const sound = basename(path) === 'sound.json';
			expect(faults === undefined).toBe(sound);
			expect(name).toBe(sound ? 'Fender bar' : basename(path));
		}
		for (const { path, name } of glanced)
			expect(name).toBe(basename(path) === 'sound.json' ? 'Fender bar' : name.length < 81 ? name : '');
	});
});
