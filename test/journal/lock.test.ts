import fs from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Locked } from '../../src/journal/errors.ts';
import { acquireLock, isZombie, type LockSelf, releaseLock, thisProcess } from '../../src/journal/lock.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { errorWords } from '../../src/words/error.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';
import { sample } from '../helpers/sample-size.ts';
import { buildChild, startChild, tempFolder } from './child.ts';
import { NOW, record } from './session-on-disk.ts';

const LOG = '/a.log';
const LOCK = '/a.log.lock';
const HERE: LockSelf = { pid: 500, host: 'bench', boot: 'boot-2', alive: (pid) => pid === 500 || pid === 77 };

function entry(over: object): Buffer {
	return Buffer.from(JSON.stringify({ pid: 77, host: 'bench', boot: 'boot-2', token: 'abc1', ...over }));
}

/** Tries to take the lock over this file; gives the file's text afterwards. */
function takeOver(
	bytes: Uint8Array,
	mtimeMs = NOW.getTime(),
): { disk: FaultFs; take: () => ReturnType<typeof acquireLock> } {
	const disk = new FaultFs();
	disk.place(LOCK, bytes, mtimeMs);
	return { disk, take: () => acquireLock(LOG, NOW, disk, HERE) };
}

/** What the error that this throws tells the operator. */
function told(run: () => unknown): string {
	try {
		run();
		return '';
	} catch (error) {
		return errorWords(error);
	}
}

describe('a lock that is left behind', () => {
	it.each([
		['by a process that lives', entry({}), NOW.getTime()],
		[
			'by a process on another machine, which cannot be seen',
			entry({ host: 'shed', pid: 1, boot: 'boot-9' }),
			NOW.getTime(),
		],
		['by a process that has made the file and not filled it yet', Buffer.alloc(0), NOW.getTime() - 9_999],
		['by one that has half filled it', entry({}).subarray(0, 10), NOW.getTime() - 9_999],
	])('%s is respected', (_, bytes, mtimeMs) => {
		const { disk, take } = takeOver(bytes, mtimeMs);
		expect(take).toThrow(Locked);
		expect(disk.readFileSync(LOCK)).toEqual(bytes);
		expect(disk.files()).toEqual([LOCK]);
	});

	it.each([
		['before the machine was last started', entry({ boot: 'boot-1' }), NOW.getTime()],
		['by a process that has ended (ESRCH)', entry({ pid: 78 }), NOW.getTime()],
		['by a process that had the number which is now ours', entry({ pid: 500 }), NOW.getTime()],
		['empty, over ten seconds ago', Buffer.alloc(0), NOW.getTime() - 10_001],
		['cut short, over ten seconds ago', entry({}).subarray(0, 10), NOW.getTime() - 10_001],
		['as zeros by a power cut', Buffer.alloc(60), NOW.getTime() - 10_001],
		['with no process in it that could be, over ten seconds ago', entry({ pid: -1 }), NOW.getTime() - 10_001],
	])('%s is taken over', (_, bytes, mtimeMs) => {
		const { disk, take } = takeOver(bytes, mtimeMs);
		const lock = take();
		expect(JSON.parse(disk.readFileSync(LOCK).toString())).toMatchObject({ pid: 500, host: 'bench', boot: 'boot-2' });
		expect(disk.files()).toEqual([LOCK]);
		releaseLock(lock, disk);
		expect(disk.files()).toEqual([]);
	});

	it('says who holds it and what to do', () => {
		const { take } = takeOver(entry({}));
		const says =
			'Process 77 on bench has this session open. Finish it there. If that process has ended, remove /a.log.lock';
		expect(told(take)).toContain(says);
		try {
			take();
		} catch (error) {
			expect(error).toMatchObject({ exitCode: 4, lock: LOCK });
		}
	});

	it('with a system that has no boot id is judged by its process', () => {
		const { disk } = takeOver(entry({ boot: null }));
		expect(() => acquireLock(LOG, NOW, disk, { ...HERE, boot: null })).toThrow(Locked);
		disk.place(LOCK, entry({ boot: null, pid: 78 }));
		expect(acquireLock(LOG, NOW, disk, { ...HERE, boot: null }).path).toBe(LOCK);
	});

	it('is not removed by one who judged it stale while another took it over in between', () => {
		const disk = new FaultFs();
		disk.place(LOCK, entry({ pid: 78 }));
		// The slow one has read the stale lock; before it goes on, the quick one takes it.
		const open = disk.openSync.bind(disk);
		let quick: ReturnType<typeof acquireLock> | null = null;
		disk.openSync = (path, flags) => {
			if (path === `${LOCK}.abc1` && !quick) {
				disk.openSync = open;
				quick = acquireLock(LOG, NOW, disk, { ...HERE, pid: 77 });
			}
			return open(path, flags);
		};
		expect(told(() => acquireLock(LOG, NOW, disk, HERE))).toMatch(/Process 77/);
		expect(quick).not.toBeNull();
		expect(JSON.parse(disk.readFileSync(LOCK).toString())).toMatchObject({ pid: 77, token: quick!.token });
	});

	it('is taken over even when one that was taking it over died at any moment', () => {
		const healthy = takeOver(entry({ pid: 78 }));
		healthy.take();
		const calls = healthy.disk.calls;
		expect(calls).toBeGreaterThan(8);
		for (let at = 1; at <= calls; at++) {
			const { disk, take } = takeOver(entry({ pid: 78 }));
			disk.fault = { kind: 'cut', at };
			expect(take).toThrow();
			const after = disk.afterProcessEnd();
			const later = new Date(NOW.getTime() + 11_000);
			const lock = acquireLock(LOG, later, after, { ...HERE, pid: 501, alive: (pid) => pid === 501 });
			expect(JSON.parse(after.readFileSync(LOCK).toString()), `died at ${at}`).toMatchObject({
				pid: 501,
				token: lock.token,
			});
		}
	});

	it('that somebody removed and took is not given back by its first holder', () => {
		const disk = new FaultFs();
		const lock = acquireLock(LOG, NOW, disk, HERE);
		disk.place(LOCK, entry({}));
		releaseLock(lock, disk);
		expect(disk.files()).toEqual([LOCK]);
	});
});

describe('two processes and one log', () => {
	function newLog(folder: string): string {
		const path = join(folder, 'a.log');
		createLog(path, record(0, 'start'), { now: NOW }).close();
		return path;
	}

	it('the second is refused and can read; when the first is killed the lock is free', async () => {
		const folder = tempFolder();
		const path = newLog(folder);
		const child = startChild(buildChild(folder), path, 'hold');
		expect(await child.line()).toBe('taken');
		expect(told(() => openLog(path, { now: NOW }))).toContain(`Process ${child.process.pid} on ${hostname()}`);
		expect(readLog(path).records).toHaveLength(1);
		await child.kill();
		expect(fs.existsSync(`${path}.lock`)).toBe(true);
		const { log } = openLog(path, { now: NOW });
		log.append(record(1, 'a'));
		log.close();
		expect(fs.readdirSync(dirname(path)).filter((name) => name.startsWith('a.log'))).toEqual(['a.log']);
	});

	it('of four that find the same stale lock at once, one gets it, each time', async () => {
		const folder = tempFolder();
		const path = newLog(folder);
		const program = buildChild(folder);
		for (let round = 0; round < sample(3, 5); round++) {
			fs.writeFileSync(
				`${path}.lock`,
				JSON.stringify({ pid: 77, host: hostname(), boot: 'an-earlier-one', token: `ab${round}` }),
			);
			const children = [1, 2, 3, 4].map(() => startChild(program, path, 'race'));
			for (const child of children) expect(await child.line()).toBe('ready');
			for (const child of children) child.process.stdin!.write('go\n');
			const said = await Promise.all(children.map((child) => child.line()));
			expect(said.sort()).toEqual(['locked', 'locked', 'locked', 'taken']);
			for (const child of children) await child.kill();
		}
	});
});

describe('a process that was killed and that its parent has not waited for yet', () => {
	it.each([
		['15311 (node) Z 15300 15311 15300 34816 15311 4227084 0 0', true],
		['15311 (node) S 15300 15311 15300 34816 15311 4194304 0 0', false],
		['15311 (a) Z (b) R 15300 15311 15300 34816 15311 4194304 0 0', false],
	])('is told by its line in /proc: %s', (stat, ended) => {
		expect(isZombie(stat)).toBe(ended);
	});

	it('this one is alive', () => {
		expect(thisProcess().alive(process.pid)).toBe(true);
	});
});
