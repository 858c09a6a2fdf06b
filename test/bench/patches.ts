/**
 * What each patch of `.ci/patches.mjs` that is there for speed gains: of a key on the pull page in both windows, or of a printed shop sheet. In
 * processor time, every round with all patches and without each one in turn; the least of the rounds is what it takes where nothing disturbs.
 * The gain is the part of the time without it that it saves. The first argument is the number of rounds, the others name patches. Exit code 1
 * where a patch of the screen gains less than a tenth of a keystroke. What prints has a limit of its own (`npm run bench:sheet`).
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { bundled, FONTS, PAPER_PATCHES, PATCHES, type Patch } from './bundled.ts';
import { METER, metered } from './spent.ts';

const ROUNDS = Number(process.argv[2] ?? 7);
/** Those to be tried; none named: all. */
const named = process.argv.slice(3);
const KEYS = 400;
/** A patch that gains less is not worth what it costs to keep. */
const LEAST = 0.1;
/** What has to be there for the program to start or to print at all. */
const NEEDED = ['devtools', 'dev', 'standard-fonts'];

/** Processor milliseconds of each thing that is measured. */
type Costs = Readonly<Record<string, number>>;

interface Subject {
	file: string;
	patches: readonly Patch[];
	/** What it costs with the bundle at that path. */
	costs(path: string): Costs;
}

const folder = mkdtempSync(join(tmpdir(), 'pullbook-patches-'));

const KEYSTROKE: Subject = {
	file: 'test/bench/keystroke-loop.ts',
	patches: PATCHES,
	costs(path) {
		const printed = execFileSync(process.execPath, [path, String(KEYS), '0'], { encoding: 'utf8', maxBuffer: 2 ** 24 });
		const runs = JSON.parse(printed) as { columns: number; rows: number; processor: number }[];
		return Object.fromEntries(
			runs.map(({ columns, rows, processor }) => [`a keystroke at ${columns}x${rows}`, processor]),
		);
	},
};

const SHEET: Subject = {
	file: 'src/main.ts',
	patches: [...PATCHES, ...PAPER_PATCHES],
	costs(path) {
		const args = [path, 'paper', SAMPLE_JOBS[0]!, '--out', '-', '--home', join(folder, 'home')];
		const { status, stderr } = spawnSync(process.execPath, [...METER, ...args], { maxBuffer: 2 ** 26 });
		if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
		return { 'a shop sheet': metered(stderr.toString()).milliseconds };
	},
};

/** Bundles it with all patches and without each of `tried`, in this order; gives the least that each took, a number a bundle. */
async function leastCosts({ file, patches, costs }: Subject, tried: readonly Patch[]): Promise<Map<string, number[]>> {
	const paths: string[] = [];
	for (const left of [null, ...tried]) {
		const own = join(folder, `${left?.name ?? 'all'}-${tried[0]!.name}`);
		mkdirSync(own);
		for (const name of FONTS) cpSync(join(dirname(PROGRAM), name), join(own, name));
		const rest = patches.filter((patch) => patch !== left);
		paths.push(await bundled(file, own, rest));
	}
	const least = new Map<string, number[]>();
	for (let round = 0; round < ROUNDS; round++) {
		// Each round begins with another one: a machine that slows down slows them all.
		for (let i = 0; i < paths.length; i++) {
			const which = (i + round) % paths.length;
			for (const [of, ms] of Object.entries(costs(paths[which]!))) {
				const known = least.get(of) ?? paths.map(() => Number.POSITIVE_INFINITY);
				known[which] = Math.min(known[which]!, ms);
				least.set(of, known);
			}
		}
	}
	return least;
}

/** Prints what each gains; whether each gains enough of something. */
async function told(subject: Subject, own: readonly Patch[]): Promise<boolean> {
	const isTried = ({ name }: Patch) => (named.length === 0 ? !NEEDED.includes(name) : named.includes(name));
	const tried = own.filter(isTried);
	if (tried.length === 0) return true;
	const most = tried.map(() => 0);
	for (const [of, [all, ...without]] of await leastCosts(subject, tried))
		for (const [i, ms] of without.entries()) {
			const gain = 1 - all! / ms;
			most[i] = Math.max(most[i]!, gain);
			const figures = `${all!.toFixed(1)} ms of processor with it, ${ms.toFixed(1)} without, least of ${ROUNDS} rounds`;
			console.log(`${tried[i]!.name}: ${(100 * gain).toFixed(0)} in 100 of ${of} (${figures})`);
		}
	return most.every((gain) => gain >= LEAST);
}

try {
	process.exitCode = (await told(KEYSTROKE, PATCHES)) ? 0 : 1;
	await told(SHEET, PAPER_PATCHES);
} finally {
	rmSync(folder, { recursive: true, force: true });
}
