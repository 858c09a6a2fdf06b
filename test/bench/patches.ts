/**
 * What each patch of `.ci/patches.mjs` that is there for speed gains: of a key on the pull page in both windows, or of a printed shop sheet. In
 * processor time, every round with all patches and without each one in turn. The gain is the part of the time without it that it saves, the
 * median of the rounds. Exit code 1 where a patch gains less than a tenth of what it is there for.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { bundled, PAPER_PATCHES, PATCHES, type Patch } from './bundled.ts';
import { median } from './rounds.ts';
import { METER, metered } from './spent.ts';

const ROUNDS = Number(process.argv[2] ?? 7);
const KEYS = 400;
/** A patch that gains less is not worth what it costs to keep. */
const LEAST = 0.1;
/** What has to be there for the program to start, to draw or to print at all. */
const NEEDED = ['devtools', 'dev', 'ci', 'standard-fonts'];

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

/** Bundles it with all patches and without each of `tried`, and gives what each of these gains of each thing, a number a round. */
async function gains({ file, patches, costs }: Subject, tried: readonly Patch[]): Promise<Map<string, number[][]>> {
	const paths: string[] = [];
	for (const left of [null, ...tried]) {
		const own = join(folder, `${left?.name ?? 'all'}-${tried[0]!.name}`);
		mkdirSync(own);
		for (const name of readdirSync(dirname(PROGRAM)))
			if (name.endsWith('.ttf')) cpSync(join(dirname(PROGRAM), name), join(own, name));
		paths.push(
			await bundled(
				file,
				own,
				patches.filter((patch) => patch !== left),
			),
		);
	}
	const found = new Map<string, number[][]>();
	for (let round = 0; round < ROUNDS; round++) {
		const cost: Costs[] = [];
		// Each round begins with another one: a machine that slows down slows them all.
		for (let i = 0; i < paths.length; i++) {
			const which = (i + round) % paths.length;
			cost[which] = costs(paths[which]!);
		}
		for (const [of, all] of Object.entries(cost[0]!)) {
			const each = found.get(of) ?? tried.map((): number[] => []);
			found.set(of, each);
			for (const [i, saved] of each.entries()) saved.push(1 - all / cost[i + 1]![of]!);
		}
	}
	return found;
}

const inHundred = (part: number) => Math.round(100 * part).toFixed(0);

/** Prints what each gains; whether each gains enough of something. */
async function told(subject: Subject, own: readonly Patch[]): Promise<boolean> {
	const tried = own.filter(({ name }) => !NEEDED.includes(name));
	const found = await gains(subject, tried);
	const most = tried.map(() => 0);
	for (const [i, { name }] of tried.entries())
		for (const [of, each] of found) {
			const gain = median(each[i]!);
			most[i] = Math.max(most[i]!, gain);
			const [least, highest] = [Math.min(...each[i]!), Math.max(...each[i]!)].map(inHundred);
			console.log(`${name}: ${inHundred(gain)} in 100 of ${of} (${least} to ${highest} in ${ROUNDS} rounds)`);
		}
	return most.every((gain) => gain >= LEAST);
}

try {
	const results = [await told(KEYSTROKE, PATCHES), await told(SHEET, PAPER_PATCHES)];
	process.exitCode = results.every(Boolean) ? 0 : 1;
} finally {
	rmSync(folder, { recursive: true, force: true });
}
