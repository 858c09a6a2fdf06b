import fs from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type FsPort, realFs } from '../../src/files/fs-port.ts';
import { LogLost, NotSaved } from '../../src/journal/errors.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { sample } from '../helpers/sample-size.ts';
import { buildChild, startChild, tempFolder } from './child.ts';
import { NOW, record } from './session-on-disk.ts';

it('kill -9 of a writer at random moments, some times on one log: no acknowledged record is lost', async () => {
	const folder = tempFolder();
	const program = buildChild(folder);
	const path = join(folder, 'sessions', 'a.log');
	let records = 0;
	for (let run = 0; run < sample(2, 10); run++) {
		const child = startChild(program, path, 'write');
		let acked = Number(await child.line());
		expect(acked, 'the next writer goes on where the log ends').toBe(Math.max(0, records - 1));
		for (let n = 1 + Math.floor(Math.random() * 60); n > 0; n--) acked = Number(await child.line());
		acked = Number((await child.kill()).at(-1) ?? acked);
		const read = readLog(path);
		expect(read.damage).toBeNull();
		expect(read.records.length).toBeGreaterThanOrEqual(acked + 1);
		// What is read beyond the acknowledged is at most the record that was under way.
		expect(read.records.length).toBeLessThanOrEqual(acked + 2);
		records = read.records.length;
	}
	const { log } = openLog(path, { now: new Date() });
	log.append(record(records, 'by the parent'));
	log.close();
	expect(readLog(path)).toMatchObject({ tail: null, damage: null });
	expect(readLog(path).records).toHaveLength(records + 1);
});

it.runIf(fs.existsSync('/dev/full'))(
	"a full device's ENOSPC leaves the log as it was, and the reading is taken later",
	() => {
		const path = join(tempFolder(), 'a.log');
		const full = fs.openSync('/dev/full', 'w');
		let isFull = false;
		const port: FsPort = {
			...realFs,
			writeSync: (fd, bytes, offset, length) => realFs.writeSync(isFull ? full : fd, bytes, offset, length),
		};
		const log = createLog(path, record(0, 'start'), { now: NOW, fs: port });
		const before = fs.readFileSync(path);
		isFull = true;
		expect(() => log.append(record(1, 'a'))).toThrow(NotSaved);
		expect(() => log.append(record(1, 'a'))).toThrow(/"errno":"ENOSPC"/);
		expect(fs.readFileSync(path)).toEqual(before);
		isFull = false;
		log.append(record(1, 'a'));
		log.close();
		fs.closeSync(full);
		expect(readLog(path).records.map((r) => r.text)).toEqual(['start', 'a']);
	},
);

it('files are for their owner alone, and a folder moved away under the session is noticed', () => {
	const folder = tempFolder();
	const path = join(folder, 'home', 'sessions', 'a.log');
	const log = createLog(path, record(0, 'start'), { now: NOW });
	const mode = (name: string): number => fs.statSync(name).mode & 0o777;
	expect([path, `${path}.lock`].map(mode)).toEqual([0o600, 0o600]);
	expect(mode(join(folder, 'home'))).toBe(0o700);
	fs.renameSync(join(folder, 'home'), join(folder, 'elsewhere'));
	expect(() => log.append(record(1, 'a'))).toThrow(LogLost);
	log.rescue(join(folder, 'home', 'sessions'));
	const { path: now } = log;
	log.append(record(1, 'a'));
	log.close();
	expect(now).toBe(path);
	expect(readLog(now).records.map((r) => r.text)).toEqual(['start', 'a']);
	expect(fs.readdirSync(join(folder, 'home', 'sessions'))).toEqual(['a.log']);
});
