/** Every fault at every step of a subject's way, and the disk afterwards: with the power kept, and after a cut with any fate of its sectors. */
import { type Fault, FaultFs } from '../helpers/disk/fault-fs.ts';
import { Broken, type Subject } from './subject.ts';

const ERRNOS = ['ENOSPC', 'EDQUOT', 'EROFS', 'EIO', 'EACCES', 'ENOENT', 'ENODEV'];
/** Bytes of a write that went through before it failed: none, one, about a sector and more. */
const PARTS = [0, 1, 9, 511, 512, 1024];
/** Fates of what was not flushed: all kept, all dropped, and so many drawn at random. */
const DRAWN = 5;

/** A small generator with a seed, so that a failure can be repeated. */
function picker(seed: number): (n: number) => number {
	let state = seed >>> 0;
	return (n) => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return Math.floor((state / 2 ** 32) * n);
	};
}

/** What happens to the disk once the program has ended: it is well again. */
type After = 'kept' | 'dropped' | number;

function diskAfter(fs: FaultFs, after: After): FaultFs {
	if (after === 'kept') return fs.afterProcessEnd();
	return fs.afterPowerCut(after === 'dropped' ? () => 1 : picker(after));
}

interface Trial {
	fault: Fault;
	after: After;
}

/** The trials at one step; `seed` makes the drawn fates of each step other ones. */
function trialsAt(at: number, call: string, seed: number): Trial[] {
	const errnos = ERRNOS.flatMap((code): Trial[] => [
		{ fault: { kind: 'errno', at, code }, after: 'kept' },
		{ fault: { kind: 'errno', at, code, forGood: true }, after: seed + at },
		{ fault: { kind: 'errno', at, code, forGood: true, under: '/home' }, after: 'dropped' },
	]);
	const cuts = [...Array(DRAWN).keys()].map(
		(n): Trial => ({ fault: { kind: 'cut', at }, after: seed + 1000 * n + at }),
	);
	const parts = call.startsWith('write ') ? partsAt(at, seed) : [];
	return [...errnos, ...parts, { fault: { kind: 'cut', at }, after: 'dropped' }, ...cuts];
}

function partsAt(at: number, seed: number): Trial[] {
	return PARTS.flatMap((bytes) =>
		['ENOSPC', 'EIO', ''].map((code, n): Trial => {
			return { fault: { kind: 'partial', at, bytes, code }, after: n === 0 ? 'kept' : seed + bytes + at };
		}),
	);
}

/** What was tried of one subject: how many steps it has, how many faults were put in by kind, and what did not hold. */
export interface Tally {
	name: string;
	steps: number;
	faults: Record<Fault['kind'], number>;
	broken: string[];
}

export async function tryAll<Left>(subject: Subject<Left>, seed: number): Promise<Tally> {
	const well = new FaultFs();
	await subject.check(well.afterProcessEnd(), await subject.run(well));
	const { trace } = await tracedRun(subject);
	const tally: Tally = {
		name: subject.name,
		steps: trace.length,
		faults: { errno: 0, partial: 0, cut: 0 },
		broken: [],
	};
	for (const [n, call] of trace.entries()) {
		for (const trial of trialsAt(n + 1, call, seed)) {
			tally.faults[trial.fault.kind]++;
			const broken = await tried(subject, trial);
			if (broken !== null) tally.broken.push(`${subject.name}: ${JSON.stringify(trial)}: ${broken}`);
		}
	}
	return tally;
}

async function tracedRun<Left>(subject: Subject<Left>): Promise<FaultFs> {
	const fs = new FaultFs();
	await subject.run(fs);
	return fs;
}

/** What did not hold; null where all did. */
async function tried<Left>(subject: Subject<Left>, { fault, after }: Trial): Promise<string | null> {
	const fs = new FaultFs(fault);
	try {
		const left = await subject.run(fs);
		await subject.check(diskAfter(fs, after), left);
		return null;
	} catch (error) {
		return error instanceof Broken ? error.message : String(error);
	}
}
