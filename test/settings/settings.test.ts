import { spawn } from 'node:child_process';
import {
	chmodSync,
	constants,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	utimesSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type FsPort, realFs } from '../../src/files/fs-port.ts';
import { openSettings as openAt } from '../../src/settings/settings.ts';
import { SettingsError } from '../../src/settings/settings-error.ts';
import { errorWords } from '../../src/words/error.ts';
import { settingsWords } from '../../src/words/settings.ts';
import { sample } from '../helpers/sample-size.ts';

/** Whether an error tells the user this. */
const says = (sentence: string | RegExp) => (error: unknown) =>
	typeof sentence === 'string' ? errorWords(error).includes(sentence) : sentence.test(errorWords(error));

/** The real disk, but for what befalls the files of the next changes. */
const disk = { error: null as string | null, under: '' };
const port: FsPort = {
	...realFs,
	openSync(path, flags, mode) {
		const writes = (flags & (constants.O_WRONLY | constants.O_RDWR)) !== 0;
		if (disk.error !== null && writes && path.includes(disk.under))
			throw Object.assign(new Error('refused'), { code: disk.error });
		return realFs.openSync(path, flags, mode);
	},
};
const openSettings = (folder: string) => openAt(folder, port);

const root = fileURLToPath(new URL('../..', import.meta.url));
let home = '';
const file = () => join(home, 'settings.json');
const sixInch = { units: 'in' as const, fields: { clr: 6, clamp: 4 } };

beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-settings-'));
	disk.error = null;
	disk.under = '';
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

describe('benders and dies', () => {
	it('are kept from one opening to the next', async () => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		const again = openSettings(home);
		expect(again.problems).toEqual([]);
		expect(again.benders()).toEqual([{ name: 'shop', machine: null, dies: [{ name: '6 in', ...sixInch }] }]);
		expect(again.tooling('shop', '6 in', 'in')).toEqual({ clr: 6, clamp: 4 });
	});

	it('are for their owner only to read', async () => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		expect(statSync(file()).mode & 0o777).toBe(0o600);
	});

	it('give lengths in the unit of the job, and ratios and angles as they are', async () => {
		const settings = openSettings(home);
		await settings.setDie('shop', '6 in', { units: 'in', fields: { clr: 6, growth: 1.021, maxAngle: 120, floor: 30 } });
		expect(settings.tooling('shop', '6 in', 'mm')).toEqual({
			clr: expect.closeTo(152.4, 12),
			growth: 1.021,
			maxAngle: 120,
			floor: expect.closeTo(762, 12),
		});
	});

	it('change field by field, and are kept in the unit of the last change; null forgets', async () => {
		const settings = openSettings(home);
		await settings.setDie('shop', '6 in', sixInch);
		await settings.setDie('shop', '6 in', { units: 'mm', fields: { follow: 50.8, clamp: null } });
		expect(settings.bender('shop')?.dies).toEqual([
			{ name: '6 in', units: 'mm', fields: { clr: expect.closeTo(152.4, 12), follow: 50.8 } },
		]);
	});

	it('hold what the machine is with every die, the die’s own value first', async () => {
		const settings = openSettings(home);
		await settings.setMachine('shop', { units: 'in', fields: { maxAngle: 120, dialStep: 1 } });
		await settings.setDie('shop', '6 in', { units: 'in', fields: { clr: 6, maxAngle: 95 } });
		expect(settings.tooling('shop', '6 in', 'in')).toEqual({ clr: 6, maxAngle: 95, dialStep: 1 });
		expect(settings.tooling('shop', 'another', 'in')).toEqual({ maxAngle: 120, dialStep: 1 });
		expect(settings.tooling('yard', '6 in', 'in')).toBeUndefined();
	});

	it.each(['1.5', '6', '__proto__', 'constructor', '__internal__', 'a.b'])('take any name, "%s" too', async (name) => {
		const settings = openSettings(home);
		await settings.setDie(name, name, sixInch);
		expect(openSettings(home).tooling(name, name, 'in')).toEqual(sixInch.fields);
		expect(openSettings(home).tooling('toString', name, 'in')).toBeUndefined();
	});

	it('are removed, and it is told when there was nothing to remove', async () => {
		const settings = openSettings(home);
		await settings.setDie('shop', '6 in', sixInch);
		expect(await settings.removeDie('shop', '5 in')).toBe(false);
		expect(await settings.removeDie('shop', '6 in')).toBe(true);
		expect(settings.bender('shop')?.dies).toEqual([]);
		expect(await settings.removeBender('shop')).toBe(true);
		expect(await settings.removeBender('shop')).toBe(false);
		expect(openSettings(home).benders()).toEqual([]);
	});

	it.each([
		[{ clr: 0 }, 'clr of die "6 in" cannot be 0; write a length from 0.0394 to 787 in'],
		[{ growth: 3 }, 'write a number from 0.5 to 2'],
		[{ maxAngle: Number.NaN }, 'write an angle in degrees from 1 to 360'],
	])('refuse %o', async (fields, sentence) => {
		await expect(openSettings(home).setDie('shop', '6 in', { units: 'in', fields })).rejects.toSatisfy(says(sentence));
		await expect(openSettings(home).setDie('shop', ' ', sixInch)).rejects.toSatisfy(says('cannot be called " "'));
		expect(readdirSync(home)).toEqual([]);
	});

	it('another program’s change in between is not lost', async () => {
		const [one, two] = [openSettings(home), openSettings(home)];
		await one.setDie('shop', '6 in', sixInch);
		await two.setDie('shop', '5 in', { units: 'in', fields: { clr: 5 } });
		expect(
			openSettings(home)
				.bender('shop')
				?.dies.map((die) => die.name),
		).toEqual(['6 in', '5 in']);
	});
});

describe('two programs at once', () => {
	/** A process of its own that keeps so many dies, one change each. */
	const other = (name: string, count: number) =>
		new Promise<string>((resolve, reject) => {
			const script = `import { openSettings } from '${join(root, 'src/settings/settings.ts')}';
for (let n = 0; n < ${count}; n++) await openSettings(${JSON.stringify(home)}).setDie('shop', '${name} ' + n, { units: 'in', fields: { clr: 5 } });`;
			const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], { cwd: root });
			let said = '';
			child.stderr.on('data', (text) => (said += String(text)));
			child.on('error', reject);
			child.on('close', (code) => resolve(`${code}${said}`));
		});

	it('lose nothing of each other, and none is refused', { timeout: 60_000 }, async () => {
		const each = sample(12, 25);
		expect(await Promise.all([other('one', each), other('two', each)])).toEqual(['0', '0']);
		const names = openSettings(home)
			.bender('shop')
			?.dies.map(({ name }) => name);
		expect(names?.toSorted()).toEqual(
			['one', 'two'].flatMap((who) => [...Array(each).keys()].map((n) => `${who} ${n}`)).sort(),
		);
		expect(readdirSync(home).sort()).toEqual(['settings.json', 'settings.json.good']);
	});

	it('a lock that is held for long is told, with what to do; one that was left is taken away', {
		timeout: 20_000,
	}, async () => {
		const lock = `${file()}.lock`;
		writeFileSync(lock, '');
		await expect(openSettings(home).setDie('shop', '6 in', sixInch)).rejects.toSatisfy(
			says(/was not written: another program is changing it .*settings\.json\.lock\)\. Try again/),
		);
		const before = Date.now() / 1000 - 60;
		utimesSync(lock, before, before);
		await openSettings(home).setDie('shop', '6 in', sixInch);
		expect(readdirSync(home).sort()).toEqual(['settings.json', 'settings.json.good']);
	});
});

describe('what stands around', () => {
	it('a file with a byte order mark is read', () => {
		writeFileSync(file(), '\uFEFF{"benders":[],"preferences":{"jobs":"/tubes"}}');
		expect(openSettings(home)).toMatchObject({ problems: [] });
		expect(openSettings(home).preferences()).toEqual({ jobs: '/tubes' });
	});

	it('files in the making that killed programs left go with the next change; those of others stay', async () => {
		const left = ['settings.json.new-1', 'settings.json.tmp-1ab2', 'settings.json.new-2', 'settings.json.mine'];
		const before = Date.now() / 1000 - 7200;
		for (const name of left) {
			writeFileSync(join(home, name), 'x');
			if (name !== 'settings.json.new-2') utimesSync(join(home, name), before, before);
		}
		await openSettings(home).setDie('shop', '6 in', sixInch);
		expect(readdirSync(home).sort()).toEqual([
			'settings.json',
			'settings.json.good',
			'settings.json.mine',
			'settings.json.new-2',
		]);
	});

	it('a home that a setting is the first to make is for its owner alone', async () => {
		const within = join(home, 'deeper', 'home');
		await openSettings(within).setDie('shop', '6 in', sixInch);
		for (const folder of [within, join(home, 'deeper')]) expect(statSync(folder).mode & 0o777).toBe(0o700);
	});
});

describe('preferences', () => {
	it('are kept beside the benders', async () => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		await openSettings(home).setPreferences({ jobs: '/tubes' });
		expect(openSettings(home).preferences()).toEqual({ jobs: '/tubes' });
		expect(openSettings(home).benders()).toHaveLength(1);
	});
});

describe('reading alone', () => {
	it('makes nothing on disk', async () => {
		rmSync(home, { recursive: true });
		const settings = openSettings(home);
		expect([settings.benders(), settings.preferences(), settings.problems]).toEqual([[], {}, []]);
		expect(() => statSync(home)).toThrow('ENOENT');
	});

	it('carries along what a newer version wrote', async () => {
		writeFileSync(file(), JSON.stringify({ benders: [], later: { kept: true } }));
		await openSettings(home).setDie('shop', '6 in', sixInch);
		expect(JSON.parse(readFileSync(file(), 'utf8')).later).toEqual({ kept: true });
	});
});

describe('a broken file', () => {
	const kinds = [
		['cut short', '{"benders":[{"name":"sh', 'it is not whole JSON'],
		['empty', '', 'it is empty'],
		['something else', '[1, 2]', 'it holds no settings'],
		[
			'a value of the wrong kind',
			'{"benders":[{"name":"shop","dies":[{"name":"6 in","units":"in","fields":{"clr":"6"}}]}]}',
			'benders.0.dies.0.fields.clr',
		],
	] as const;

	it.each(kinds)('%s is put aside and said; the last good copy is used and put back', async (_, text, fault) => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		const good = readFileSync(file(), 'utf8');
		writeFileSync(file(), text);
		const settings = openSettings(home);
		expect(settings.tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
		expect(settings.problems).toHaveLength(1);
		expect(settingsWords(settings.problems[0]!)).toContain(fault);
		expect(settingsWords(settings.problems[0]!)).toContain('settings.json.bad.');
		expect(readFileSync(`${file()}.bad`, 'utf8')).toBe(text);
		expect(readFileSync(file(), 'utf8')).toBe(good);
		expect(openSettings(home).problems).toEqual([]);
	});

	it('without a copy leaves nothing kept, and what was put aside before stays', async () => {
		writeFileSync(`${file()}.bad`, 'older');
		writeFileSync(file(), 'newer');
		const settings = openSettings(home);
		expect(settings.benders()).toEqual([]);
		expect(settingsWords(settings.problems[0]!)).toContain('No copy of it is kept.');
		expect(readFileSync(`${file()}.bad`, 'utf8')).toBe('older');
		expect(readFileSync(`${file()}.bad-2`, 'utf8')).toBe('newer');
		await settings.setDie('shop', '6 in', sixInch);
		expect(openSettings(home).tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
	});

	it('and a broken copy are both said', async () => {
		writeFileSync(file(), 'x');
		writeFileSync(`${file()}.good`, 'x');
		expect(settingsWords(openSettings(home).problems[0]!)).toContain('.good is broken too');
	});

	it('that vanished is made again from its copy', async () => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		rmSync(file());
		const settings = openSettings(home);
		expect(settings.tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
		expect(settingsWords(settings.problems[0]!)).toContain('is missing');
	});
});

describe('a disk that refuses', () => {
	it('holds what no bender has: that does not count and is said, the rest does', () => {
		const name = 'n'.repeat(90);
		const fields = { clr: 6, growth: 1.01, maxAngle: 1e-320, tape: 1e9 };
		const dies = [{ name, units: 'in', fields }];
		const machine = { units: 'mm', fields: { dialStep: 0.25, floor: 20_000 } };
		writeFileSync(file(), JSON.stringify({ benders: [{ name: 'quay', machine, dies }] }));
		const settings = openSettings(home);
		expect(settings.tooling('quay', name, 'in')).toEqual({ dialStep: 0.25, clr: 6, growth: 1.01 });
		expect(settings.problems.map(settingsWords)).toEqual([
			'floor of bender "quay" is kept as 20000 and does not count: set a length from 0 to 10000 mm.',
			`maxAngle of die "${name}" of bender "quay" is kept as 1e-320 and does not count: set an angle in degrees from 1 to 360.`,
			`tape of die "${name}" of bender "quay" is kept as 1000000000 and does not count: set a length from 0.000394 to 3.93 in.`,
		]);
	});

	it.each(['ENOSPC', 'EROFS', 'EACCES'])('with %s: exit code 5, the reason named, nothing lost', async (code) => {
		const settings = openSettings(home);
		await settings.setDie('shop', '6 in', sixInch);
		disk.error = code;
		const change = settings.removeDie('shop', '6 in');
		await expect(change).rejects.toSatisfy(says(`was not written (${code})`));
		await expect(change).rejects.toMatchObject({ exitCode: 5 });
		expect(settings.tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
		expect(openSettings(home).tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
	});

	it('leaves a spare copy unrenewed: the change is kept and it is said', async () => {
		disk.error = 'EIO';
		disk.under = '.good.new-';
		const settings = openSettings(home);
		await settings.setDie('shop', '6 in', sixInch);
		expect(settings.problems.map(settingsWords)).toEqual([expect.stringContaining('could not be renewed (EIO)')]);
		expect(openSettings(home).tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
	});

	it('has something else where the folder or the file should be', async () => {
		const within = join(home, 'file', 'home');
		writeFileSync(join(home, 'file'), '');
		expect(settingsWords(openSettings(within).problems[0]!)).toContain('cannot be read (ENOTDIR)');
		await expect(openSettings(within).setDie('shop', '6 in', sixInch)).rejects.toThrow(SettingsError);
		mkdirSync(file());
		expect(settingsWords(openSettings(home).problems[0]!)).toContain('cannot be read (EISDIR)');
		await expect(openSettings(home).setDie('shop', '6 in', sixInch)).rejects.toThrow(SettingsError);
	});

	it.skipIf(process.getuid?.() === 0)('is read-only: reading goes on, writing says so', async () => {
		await openSettings(home).setDie('shop', '6 in', sixInch);
		chmodSync(home, 0o500);
		const settings = openSettings(home);
		expect(settings.tooling('shop', '6 in', 'in')).toEqual(sixInch.fields);
		await expect(settings.removeDie('shop', '6 in')).rejects.toSatisfy(says('was not written (EACCES)'));
		chmodSync(home, 0o700);
	});
});
