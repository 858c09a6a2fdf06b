import { describe, expect, it } from 'vitest';
import { type Fault, FaultFs } from '../helpers/disk/fault-fs.ts';
import { sample } from '../helpers/sample-size.ts';
import { expectFoundByHome, expectKept, runSession } from './session-on-disk.ts';

// One sitting that is killed and one that ends well; a record longer than two sectors among them.
const SITTINGS = [
	['one', 'x'.repeat(1300), 'two'],
	['three', 'ä'.repeat(300), 'four'],
];
/** The rest is tried at full size, and more of each by `npm run faults`. */
const ERRNOS = ['ENOSPC', 'EIO', 'EDQUOT', 'EROFS', 'EACCES', 'ENOENT', 'ENODEV'].slice(0, sample(2, 7));

/** A small generator with a seed, so that a failure can be repeated. */
function picker(seed: number): (n: number) => number {
	let state = seed >>> 0;
	return (n) => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return Math.floor((state / 2 ** 32) * n);
	};
}

function callsOf(sittings: string[][]): string[] {
	const fs = new FaultFs();
	const left = runSession(fs, sittings);
	expect(left).toMatchObject({ error: null, acked: 7 });
	return fs.trace;
}

/** Each fault in turn; afterwards the disk is well again, once with the power kept and twice with it cut as well. */
function tryAll(faults: Fault[]): { runs: number; ended: number } {
	const count = { runs: 0, ended: 0 };
	for (const fault of faults) {
		for (const seed of [0, 1, 2]) {
			const fs = new FaultFs(fault);
			const left = runSession(fs, SITTINGS);
			const label = `${JSON.stringify(fault)}, seed ${seed}`;
			const after =
				seed === 0 && fault.kind !== 'cut'
					? fs.afterProcessEnd()
					: fs.afterPowerCut(seed === 1 ? () => 1 : picker(seed));
			if (fault.kind !== 'errno' || !fault.forGood) expectFoundByHome(after, left, label);
			expectKept(after, left, label);
			count.runs++;
			if (left.error) count.ended++;
		}
	}
	return count;
}

const trace = callsOf(SITTINGS);
const steps = trace.map((_, i) => i + 1);
const writes = steps.filter((at) => trace[at - 1]!.startsWith('write '));

describe('a session on a failing disk, the fault at every call in turn', () => {
	it.each(ERRNOS)('%s once: the session goes on or ends with our error, and nothing acknowledged is lost', (code) => {
		const { runs } = tryAll(steps.map((at) => ({ kind: 'errno', at, code })));
		expect(runs).toBe(steps.length * 3);
	});

	it.each(ERRNOS)('%s from then on, everywhere: it ends, and nothing acknowledged is lost', (code) => {
		const { ended } = tryAll(steps.map((at) => ({ kind: 'errno', at, code, forGood: true })));
		expect(ended).toBeGreaterThan(steps.length);
	});

	it.each(ERRNOS)('%s from then on in the home folder: it goes on elsewhere', (code) => {
		tryAll(steps.map((at) => ({ kind: 'errno', at, code, forGood: true, under: '/home' })));
	});

	it('writes that put down a part and throw, or only put down a part', () => {
		const parts = [0, 1, 9, 511, 512, 1024].flatMap((bytes) => ['ENOSPC', 'EIO', ''].map((code) => ({ bytes, code })));
		tryAll(writes.flatMap((at) => parts.map((part): Fault => ({ kind: 'partial', at, ...part }))));
	});

	it('a power cut, with any of the unflushed sectors and names kept, dropped or zeroed', () => {
		const { runs, ended } = tryAll(steps.map((at) => ({ kind: 'cut', at })));
		// Only closing, at the very end, may be cut without anybody noticing.
		expect(ended).toBeGreaterThan(runs * 0.9);
		for (const at of steps)
			for (let seed = 10; seed < sample(14, 30); seed++) {
				const fs = new FaultFs({ kind: 'cut', at });
				const left = runSession(fs, SITTINGS);
				expectKept(fs.afterPowerCut(picker(seed)), left, `cut at ${at}, seed ${seed}`);
			}
	});
});
