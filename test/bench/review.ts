/**
 * What looking at kept sessions costs: a session of 200 pulls from the start of the program to its first frame, as a multiple of what Node
 * itself takes; ten thousand sessions listed, found, on the home screen and searched, in processor time above the same in a home with one session;
 * a key on a plot and a letter in that list, in the code as it is bundled. Exit code 1 when a limit is passed.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROGRAM } from '../helpers/disk/program.ts';
import { bundled, PAPER_PATCHES, PATCHES } from './bundled.ts';
import { timeInTerminal } from './in-terminal.ts';
import { keepManyPulls, keepRows } from './review-homes.ts';
import { interleave, median, table } from './rounds.ts';
import { type Spent, spentOn } from './spent.ts';

const ROUNDS = Number(process.argv[2] ?? 11);
const SESSIONS = 10_000;
const PULLS = 200;
/** Longer than any start; only a program that hangs gets there. */
const GIVE_UP_MS = 60_000;
const LIMIT_MS = 16;
const NODE = 'node -e 0';
/**
 * The limit of a list. What is held to it is the processor time, the system's and the collector's too, of a whole run from the start of Node to its
 * end, less that of the same run in a home with one session: what ten thousand sessions cost. In it are the look at every log on the disk, the cache,
 * the home screen's jobs and news, and on the screen rows that a home with one session has not to draw. Finding one in a list is held to it by itself.
 */
const MOST_MS = 300;
const MOST_MB = 200;

const folder = mkdtempSync(join(tmpdir(), 'pullbook-review-'));
const [one, many] = [join(folder, 'one'), join(folder, 'many')];

/** Milliseconds to `wanted` on the screen, or without it to the end: all in a pseudo-terminal, since a busy machine may give each of those a share of its own. */
const timeOf = (args: readonly string[], wanted: string | null, keys = ''): Promise<number> =>
	timeInTerminal({ args, cwd: folder, home: one, keys, giveUpMs: GIVE_UP_MS }, wanted === null ? null : [wanted]);

interface Looped {
	name: string;
	times: number[];
	processor: number;
}

/** What is done in a home with ten thousand sessions and in one with a single one; Ctrl-C leaves the screen. `after`: what it goes on from, for which it is not charged. */
const AMONG_MANY: Readonly<Record<string, { args: string[]; steps?: (readonly [string, string])[]; after?: string }>> =
	{
		log: { args: [PROGRAM, 'log'] },
		'log --find': { args: [PROGRAM, 'log', '--find', 'rail 7'] },
		'log --json': { args: [PROGRAM, 'log', '--json'] },
		'home screen': { args: [PROGRAM], steps: [['look at a kept', '\x03']] },
		'list on the screen': {
			args: [PROGRAM],
			steps: [
				['look at a kept', 'look at a\r'],
				['Kept sessions', '\x03'],
			],
		},
		// Home screen, list, and eight letters in one burst, each of which narrows all sessions; the window of 50 rows is full each time.
		'list on the screen, searched': {
			args: [PROGRAM],
			steps: [
				['look at a kept', 'look at a\r'],
				['Kept sessions', 'rail bay'],
				['rail bay', '\x03'],
			],
			after: 'list on the screen',
		},
	};

/** Prints what each took; whether all kept their limits. */
async function amongMany(): Promise<boolean> {
	let isWithin = true;
	const known = new Map<string, number>();
	for (const [name, { after, ...run }] of Object.entries(AMONG_MANY)) {
		const spent = (home: string): Promise<Spent> => spentOn({ ...run, cwd: folder, home, giveUpMs: GIVE_UP_MS });
		const pairs: [Spent, Spent][] = [];
		for (let round = 0; round < ROUNDS; round++) pairs.push([await spent(one), await spent(many)]);
		const alone = median(pairs.map(([first]) => first.milliseconds));
		const whole = median(pairs.map(([first, second]) => second.milliseconds - first.milliseconds));
		known.set(name, whole);
		const above = whole - (after === undefined ? 0 : known.get(after)!);
		const memory = Math.max(...pairs.map(([, second]) => second.megabytes));
		console.log(
			`${name}: ${alone.toFixed(0)} ms of processor with one session, ${above.toFixed(0)} more with ${SESSIONS}${after === undefined ? '' : `, beside those of the ${after}`} (limit ${MOST_MS}), ${memory.toFixed(0)} MB (limit ${MOST_MB})`,
		);
		isWithin &&= above <= MOST_MS && memory <= MOST_MB;
	}
	return isWithin;
}

/** What review-loop.ts measures with a home, bundled with the same patches as the program. */
async function bundledLoop(): Promise<(home: string) => Looped[]> {
	const path = await bundled('test/bench/review-loop.ts', folder, [...PATCHES, ...PAPER_PATCHES]);
	return (home) => {
		return JSON.parse(execFileSync(process.execPath, [path, home], { encoding: 'utf8', maxBuffer: 2 ** 24 }));
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
		],
		ROUNDS,
	);
	console.log(table(results).join('\n'));
	const isFew = await amongMany();
	const keys = (await bundledLoop())(many);
	for (const { name, times, processor } of keys) {
		const figures = [0.5, 0.95, 0.99, 1].map((part) => ranked(times, part).toFixed(1)).join(', ');
		console.log(
			`${name}, ms: median, p95, p99, most ${figures} (${times.length} keys); processor ${processor.toFixed(1)} ms a key`,
		);
	}
	const isQuick = keys.every(({ times }) => ranked(times, 0.99) < LIMIT_MS);
	return results.every(({ within }) => within) && isFew && isQuick;
}

try {
	process.exitCode = (await run()) ? 0 : 1;
} finally {
	rmSync(folder, { recursive: true, force: true });
}
