import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { runCheck } from '../../src/cli/check.ts';
import { loadJob } from '../../src/job/load.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { toldRefusal } from '../helpers/disk/told-faults.ts';

let folder: string;
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'pullbook-job-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function write(name: string, content: unknown): string {
	const path = join(folder, name);
	writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
	return path;
}

const refusal = (path: string) => toldRefusal(() => loadJob(path));

async function check(files: string[], json: boolean) {
	let text = '';
	const stdout = { write: (part: string) => (text += part) } as unknown as NodeJS.WriteStream;
	return { code: await runCheck({ files, json, home: folder }, { stdout, stderr: stdout }), text };
}

it('gives the job, the file as it stands and its real path', () => {
	const path = write('bar.json', plainJobFile());
	const link = join(folder, 'link.json');
	symlinkSync(path, link);
	const loaded = loadJob(link);
	expect(loaded.job.name).toBe('Fender bar');
	expect(loaded.raw).toEqual(plainJobFile());
	expect(loaded.path).toBe(realpathSync(path));
});

it('joins faults of the text and of the job, one a line', () => {
	const text = JSON.stringify(change(plainJobFile(), 'risk', 2)).replace('"od":1.5', '"od":1.5,"od":-1');
	const { error, message, faults } = refusal(write('bar.json', text));
	expect(faults.map(({ at }) => at)).toEqual(['tube.od', 'risk', 'tube.od']);
	expect(error.exitCode).toBe(2);
	expect(message.split('\n')).toHaveLength(4);
	expect(message).toContain('bar.json: 3 faults\n  tube.od: found the key "od" a second time');
});

it('says so when there is no file to read', () => {
	mkdirSync(join(folder, 'jobs'));
	expect(refusal(join(folder, 'none.json')).message).toContain('no such file');
	expect(refusal(join(folder, 'jobs')).message).toContain('a folder');
	expect(refusal(write('big.json', ' '.repeat(1_000_001))).message).toContain('more than 1 MB');
	expect(refusal(write('full.json', ' '.repeat(1_000_000))).message).toContain('the end of the file');
});

it('is read with several dies, each bend with the one it names', () => {
	const bend = (die?: string) => ({ straight: 12, angle: 40, rotation: 0, ...(die && { die }) });
	const file = (...dies: (string | undefined)[]) => ({
		...plainJobFile(),
		tooling: { clr: 5, die: 'wide', dies: { tight: { clr: 4 } } },
		shape: { bends: dies.map(bend), last: 14 },
	});
	const two = write('two.json', file('wide', 'tight', undefined));
	const { shape } = loadJob(two).job;
	expect(shape.kind === 'bends' && shape.bends.map(({ die }) => die)).toEqual(['wide', 'tight', undefined]);
});

it('check prints every file and every fault, and fails when one has any', async () => {
	const sound = write('sound.json', plainJobFile());
	const faulty = write('faulty.json', change(change(plainJobFile(), 'risk', 2) as object, 'tube.wall', 9));
	expect(await check([sound], false)).toEqual({ code: 0, text: `${sound}: ok\n` });
	const both = await check([sound, faulty], false);
	expect(both.code).toBe(2);
	expect(both.text.split('\n')).toEqual([
		`${sound}: ok`,
		`${faulty}: 2 faults`,
		expect.stringMatching(/^ {2}risk: found 2; write .*from 0\.0001 to 0\.5/),
		'  tube.wall: found 9; write a wall of at most half the outside diameter, 0.75',
		'',
	]);
});

it('check --json prints one document', async () => {
	const faulty = write('faulty.json', change(plainJobFile(), 'tube.wall', 9));
	const { code, text } = await check([faulty, join(folder, 'none.json')], true);
	expect(code).toBe(2);
	expect(JSON.parse(text)).toEqual({
		files: [
			{ file: faulty, ok: false, faults: [expect.objectContaining({ at: 'tube.wall', found: '9' })] },
			{ file: join(folder, 'none.json'), ok: false, faults: [expect.objectContaining({ found: 'no such file' })] },
		],
	});
});
