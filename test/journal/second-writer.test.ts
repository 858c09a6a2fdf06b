import { describe, expect, it } from 'vitest';
import { Overtaken } from '../../src/journal/errors.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import type { LogWriter } from '../../src/journal/writer.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';
import { LOG, NOW, record } from './session-on-disk.ts';

const LOCK = `${LOG}.lock`;
const texts = (fs: FaultFs) => readLog(LOG, fs).records.map(({ text }) => text);

/** A log that process 1 writes. */
function sleeping(): { fs: FaultFs; first: LogWriter } {
	const fs = new FaultFs();
	const first = createLog(LOG, record(0, 'start'), { now: NOW, fs, self: onlyProcess(1) });
	first.append(record(1, 'first'));
	return { fs, first };
}

/** Another session of it, in a process that takes the first one for dead or finds no lock. */
function second(fs: FaultFs): LogWriter {
	return openLog(LOG, { now: NOW, fs, self: onlyProcess(2) }).log;
}

/** `isOwnLock`: it is given back. */
function expectStopped(fs: FaultFs, first: LogWriter, by: string, isOwnLock = false): void {
	const before = fs.readFileSync(LOG);
	const files = fs.files();
	for (let time = 0; time < 2; time++) {
		expect(() => first.append(record(first.count, 'late'))).toThrow(Overtaken);
		expect(() => first.append(record(first.count, 'late'))).toThrow(`"by":"${by}"`);
	}
	expect(() => first.rescue('/other'), 'never over a continuation').toThrow(Overtaken);
	first.close();
	expect(fs.readFileSync(LOG)).toEqual(before);
	expect(fs.files()).toEqual(isOwnLock ? files.filter((name) => name !== LOCK) : files);
}

describe('a writer that was asleep', () => {
	it('whose lock was removed adds nothing, also when nobody else has come', () => {
		const { fs, first } = sleeping();
		fs.unlinkSync(LOCK);
		expectStopped(fs, first, 'lock-gone');
		expect(texts(fs)).toEqual(['start', 'first']);
	});

	it('whose lock was taken over leaves the new one alone', () => {
		const { fs, first } = sleeping();
		const other = second(fs);
		expectStopped(fs, first, 'lock-taken');
		other.append(record(2, 'second'));
		other.close();
		expect(texts(fs)).toEqual(['start', 'first', 'second']);
		expect(fs.files()).toEqual([LOG]);
	});

	it.each([true, false])('whose session a second one finished keeps its lines (with lines of its own: %s)', (adds) => {
		const { fs, first } = sleeping();
		fs.unlinkSync(LOCK);
		const other = second(fs);
		if (adds) other.append(record(2, 'second'));
		other.close();
		expectStopped(fs, first, adds ? 'lines-added' : 'lock-gone');
		expect(texts(fs)).toEqual(adds ? ['start', 'first', 'second'] : ['start', 'first']);
	});

	it('whose log was put back longer from a copy adds nothing to it', () => {
		const { fs, first } = sleeping();
		const copy = fs.readFileSync(LOG);
		first.append(record(2, 'second'));
		const longer = fs.readFileSync(LOG);
		const asleep = sleeping();
		asleep.fs.place(LOG, longer);
		expectStopped(asleep.fs, asleep.first, 'lines-added', true);
		expect(copy.length).toBeLessThan(longer.length);
	});
});
