/**
 * What looking at kept sessions costs: a session of 200 pulls from the start of the program to its first frame, as a multiple of what Node
 * itself takes; a list of 10,000 above one of a single session; a key on a plot and a letter in that list, in the code as it is bundled. Exit code
 * 1 when a limit is passed.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { PROGRAM } from '../helpers/disk/program.ts';
import { timeInTerminal } from './in-terminal.ts';
import { keepManyPulls, keepRows } from './review-homes.ts';
import { interleave, median, table } from './rounds.ts';

const ROUNDS = Number(process.argv[2] ?? 11);
const SESSIONS = 10_000;
const PULLS = 200;
/** Longer than any start; only a program that hangs gets there. */
const GIVE_UP_MS = 60_000;
const LIMIT_MS = 16;
const NODE = 'node -e 0';
const LOG = `log --find among ${SESSIONS}`;
const LOOPS = 3;
/** Above bare Node for the command, above a home with one session for the screen: what ten thousand sessions cost. */
const LIST_MS = 300;
const LIST_MB = 200;

const folder = mkdtempSync(join(tmpdir(), 'pullbook-review-'));
const [one, many] = [join(folder, 'one'), join(folder, 'many')];

/** Milliseconds to `wanted` on the screen, or without it to the end: all in a pseudo-terminal, since a busy machine may give each of those a share of its own. */
const timeOf = (args: readonly string[], wanted: string | null, keys = '', home = one): Promise<number> =>
	timeInTerminal({ args, cwd: folder, home, keys, giveUpMs: GIVE_UP_MS }, wanted === null ? null : [wanted]);

interface Looped {
	name: string;
	times: number[];
	processor: number;
}

interface Loop {
	keys: Looped[];
	list: { milliseconds: number; megabytes: number };
}

/** What review-loop.ts measures with a home, bundled with the same patches as the program. */
async function bundledLoop(): Promise<(...args: string[]) => Loop> {
	const { bundleOptions, root } = await import(new URL('../../.ci/bundle.mjs', import.meta.url).href);
	const { PATCHES, patches } = await import(new URL('../../.ci/patches.mjs', import.meta.url).href);
	await build({
		...bundleOptions,
		plugins: [patches(PATCHES)],
		entryPoints: { review: join(root, 'test', 'bench', 'review-loop.ts') },
		outdir: folder,
		outExtension: { '.js': '.mjs' },
	});
	return (...args) => {
		const loop = [join(folder, 'review.mjs'), ...args];
		return JSON.parse(execFileSync(process.execPath, loop, { encoding: 'utf8', maxBuffer: 2 ** 24 }));
	};
}

const ranked = (values: readonly number[], part: number): number => {
	const sorted = values.toSorted((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!;
};

async function run(): Promise<boolean> {
	const pulls = keepManyPulls(one, PULLS);
	keepRows(many, SESSIONS);
	const results = await interleave(
		[
			{ name: NODE, limit: null, run: () => timeOf(['-e', '0'], null) },
			{ name: 'home screen', limit: null, run: () => timeOf([PROGRAM], 'Many pulls') },
			{
				name: `review of ${pulls} pulls, first frame`,
				limit: 3.5,
				run: () => timeOf([PROGRAM], 'Session 2026', 'many\r'),
			},
			{
				name: 'the same, its whole story',
				limit: null,
				run: () => timeOf([PROGRAM], 'all of it as one text', 'many\r'),
			},
			{ name: LOG, limit: null, run: () => timeOf([PROGRAM, 'log', '--find', 'rail 7'], null, '', many) },
		],
		ROUNDS,
	);
	console.log(table(results).join('\n'));
	const medianOf = (name: string) => results.find((result) => result.name === name)?.median ?? Number.NaN;
	const command = medianOf(LOG) - medianOf(NODE);
	console.log(`${LOG}, above bare Node: ${command.toFixed(0)} ms (limit ${LIST_MS})`);
	const loop = await bundledLoop();
	const above = median(Array.from({ length: LOOPS }, () => loop(many).list.milliseconds - loop(one).list.milliseconds));
	const { keys, list } = loop(many, 'keys');
	for (const { name, times, processor } of keys) {
		const figures = [0.5, 0.95, 0.99, 1].map((part) => ranked(times, part).toFixed(1)).join(', ');
		console.log(
			`${name}, ms: median, p95, p99, most ${figures} (${times.length} keys); processor ${processor.toFixed(1)} ms a key`,
		);
	}
	console.log(
		`${SESSIONS} sessions on the screen, from the start to the list searched: ${list.milliseconds.toFixed(0)} ms of processor, ${above.toFixed(0)} above one session (limit ${LIST_MS}), ${list.megabytes.toFixed(0)} MB (limit ${LIST_MB})`,
	);
	const isQuick = keys.every(({ times }) => ranked(times, 0.99) < LIMIT_MS);
	return (
		results.every(({ within }) => within) && isQuick && Math.max(command, above) <= LIST_MS && list.megabytes <= LIST_MB
	);
}

try {
	process.exitCode = (await run()) ? 0 : 1;
} finally {
	rmSync(folder, { recursive: true, force: true });
}
