/**
 * What a long history costs: the start of a session, the home screen and the list, with as many kept sessions as the first argument says
 * (10000), against an empty home in the same run; and the first reading of them all. What a start costs more than in an empty home is held, in
 * processor time, against what bare Node takes to read the names of the logs and look at each: less would not notice one that has changed. A second argument names another program file to
 * measure. Exit code 1 when a limit is passed.
 */
import { spawn as spawnPiped } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { sessionFolder } from '../../src/journal/catalogue.ts';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { fillHome, newHome, simulatedSessions } from './history-logs.ts';
import { interleave, type Measurement, median, table } from './rounds.ts';
import { spentOn } from './spent.ts';

const ROUNDS = 11;
/** What a start may cost above one in an empty home, as a multiple of what looking at every log costs bare Node. */
const MOST_TIMES_LOOKING = 6;
const MOST_MB = 150;
/** What one session among many may take longer to be found and shown than one that is alone. */
const MOST_MS_TO_FIND = 300;
const MOST_TREND_MS = 500;
/** Longer than any start; only a program that hangs gets there. */
const GIVE_UP_MS = 60_000;

/** Bare Node reads the names in a folder and looks at each file. */
const LOOKS = `const { readdirSync, statSync } = require('node:fs');
const folder = process.argv[1];
for (const name of readdirSync(folder).sort()) statSync(folder + '/' + name);`;

/** Of the many sessions the one that is looked for. */
const MIDDLE = 432;

const many = Number(process.argv[2] ?? 10_000);
const program = process.argv[3] ?? PROGRAM;
const job = SAMPLE_JOBS[0]!;
const jobName: string = JSON.parse(readFileSync(job, 'utf8')).name;
const folder = mkdtempSync(join(tmpdir(), 'pullbook-history-'));
const peaks: Record<string, number> = {};

/** Most memory that the process has had so far, in MB; 0 where the system does not tell. */
function peakOf(pid: number | undefined): number {
	try {
		const status = readFileSync(`/proc/${pid}/status`, 'utf8');
		return Number(/VmHWM:\s+(\d+) kB/.exec(status)?.[1] ?? 0) / 1024;
	} catch {
		// Gone, or no Linux.
		return 0;
	}
}

/** Milliseconds from the start of Node to the first ask of a new session. Takes the session's log away again. */
function timeSession(home: string, label: string): Promise<number> {
	return new Promise((resolve, reject) => {
		const before = new Set(namesIn(home));
		const from = performance.now();
		const child = spawnPiped(process.execPath, [program, 'bend', job, '--lines', '--home', home]);
		let out = '';
		let taken: number | null = null;
		child.stdout.on('data', (data) => {
			out += data;
			if (taken !== null || !out.includes('{"ask"')) return;
			taken = performance.now() - from;
			peaks[label] = Math.max(peaks[label] ?? 0, peakOf(child.pid));
			child.stdin.end();
		});
		child.stderr.on('data', (data) => process.stderr.write(`${label}: ${data}`));
		child.on('close', (code) => {
			for (const name of namesIn(home)) if (!before.has(name)) rmSync(join(sessionFolder(home), name));
			if (taken === null) reject(new Error(`${label}: no ask, exit code ${code}, ${out}`));
			else resolve(taken);
		});
	});
}

/** Milliseconds of processor from the start of Node to the first ask of a session that is broken off there. Takes its log away again. */
async function processorOfStart(home: string): Promise<number> {
	const before = new Set(namesIn(home));
	const args = [program, 'bend', job, '--lines', '--home', home];
	const { milliseconds } = await spentOn({
		args,
		cwd: folder,
		home,
		steps: [['{"ask"', '\x03']],
		giveUpMs: GIVE_UP_MS,
	});
	for (const name of namesIn(home)) if (!before.has(name)) rmSync(join(sessionFolder(home), name));
	return milliseconds;
}

/** Prints what a start costs above one in an empty home; whether it keeps its limit. */
async function startsWithin(empty: string, full: string): Promise<boolean> {
	const bare = async (args: string[]) =>
		(await spentOn({ args, cwd: folder, home: empty, giveUpMs: GIVE_UP_MS })).milliseconds;
	const rounds: { above: number; looking: number }[] = [];
	for (let round = 0; round < ROUNDS; round++) {
		const above = -(await processorOfStart(empty)) + (await processorOfStart(full));
		const looking = -(await bare(['-e', '0'])) + (await bare(['-e', LOOKS, sessionFolder(full)]));
		rounds.push({ above, looking });
	}
	const above = median(rounds.map((round) => round.above));
	const looking = median(rounds.map((round) => round.looking));
	console.log(
		`processor time of a start above an empty home: ${above.toFixed(0)} ms, where bare Node takes ${looking.toFixed(0)} to look at every log: ${(above / looking).toFixed(1)} times (limit ${MOST_TIMES_LOOKING})`,
	);
	return above <= MOST_TIMES_LOOKING * looking;
}

function namesIn(home: string): string[] {
	try {
		return readdirSync(sessionFolder(home));
	} catch {
		// Nothing was kept there yet.
		return [];
	}
}

/** Milliseconds from the start of Node to a job's name on the home screen, in a real pseudo-terminal. */
function timeHome(home: string, label: string): Promise<number> {
	return new Promise((resolve, reject) => {
		const from = performance.now();
		const env = { ...process.env, PULLBOOK_HOME: home, TERM: 'xterm-256color', CI: 'false' };
		const terminal = spawn(process.execPath, [program], { env, cols: 80, rows: 24 });
		let output = '';
		let taken: number | null = null;
		const timer = setTimeout(() => terminal.kill('SIGKILL'), GIVE_UP_MS);
		terminal.onData((data) => {
			output += data;
			if (taken !== null || !output.includes(jobName)) return;
			taken = performance.now() - from;
			peaks[label] = Math.max(peaks[label] ?? 0, peakOf(terminal.pid));
			terminal.kill('SIGKILL');
		});
		terminal.onExit(() => {
			clearTimeout(timer);
			if (taken !== null) resolve(taken);
			else reject(new Error(`${label}: no job's name was drawn: ${JSON.stringify(output.slice(-300))}`));
		});
	});
}

/** Milliseconds of a command that prints, to its end. */
function timeRun(args: readonly string[], home: string, label: string): Promise<number> {
	return new Promise((resolve, reject) => {
		const from = performance.now();
		const child = spawnPiped(process.execPath, [program, ...args, '--home', home], {
			stdio: ['ignore', 'pipe', 'inherit'],
		});
		const look = () => {
			peaks[label] = Math.max(peaks[label] ?? 0, peakOf(child.pid));
		};
		const timer = setInterval(look, 50);
		child.stdout.on('data', look);
		child.on('close', (code) => {
			clearInterval(timer);
			if (code === 0) resolve(performance.now() - from);
			else reject(new Error(`${label}: exit code ${code}`));
		});
	});
}

async function run(): Promise<boolean> {
	const kinds = simulatedSessions(SAMPLE_JOBS, newHome(folder, 'simulated'));
	const [empty, full] = [newHome(folder, 'empty'), newHome(folder, 'full')];
	fillHome(full, kinds, 0, many);
	const alone = newHome(folder, 'alone');
	fillHome(alone, kinds, MIDDLE, MIDDLE + 1);
	const [middle] = namesIn(alone).map((name) => name.replace(/\.log$/, ''));
	const rebuild = await timeRun(['log', '--json'], full, 'first reading of all');
	console.log(`${many} kept sessions, first read in ${(rebuild / 1000).toFixed(1)} s`);
	let kept = many;
	const measurements: Measurement[] = [
		{ name: 'session, empty home', limit: null, run: () => timeSession(empty, 'session, empty home') },
		{ name: 'session', limit: null, run: () => timeSession(full, 'session') },
		{
			name: 'session, one new log',
			limit: null,
			run: () => {
				fillHome(full, kinds, kept, ++kept);
				return timeSession(full, 'session, one new log');
			},
		},
		{ name: 'home screen, empty', limit: null, run: () => timeHome(empty, 'home screen, empty') },
		{ name: 'home screen', limit: null, run: () => timeHome(full, 'home screen') },
		{ name: 'log', limit: null, run: () => timeRun(['log'], full, 'log') },
		{ name: 'log ID, alone', limit: null, run: () => timeRun(['log', middle!], alone, 'log ID, alone') },
		{ name: 'log ID', limit: null, run: () => timeRun(['log', middle!], full, 'log ID') },
		{ name: 'log --trend', limit: null, run: () => timeRun(['log', '--trend'], full, 'log --trend') },
		{ name: 'bender', limit: null, run: () => timeRun(['bender'], full, 'bender') },
	];
	const results = await interleave(measurements, ROUNDS);
	console.log(table(results).join('\n'));
	console.log(
		`most memory, MB: ${Object.entries(peaks)
			.map(([name, mb]) => `${name} ${mb.toFixed(0)}`)
			.join('; ')}`,
	);
	const medianOf = (name: string) => results.find((result) => result.name === name)?.median ?? Number.NaN;
	const above = medianOf('session') - medianOf('session, empty home');
	const most = Math.max(peaks.session ?? 0, peaks['first reading of all'] ?? 0);
	console.log(`session above an empty home: ${above.toFixed(0)} ms, memory ${most.toFixed(0)} MB (limit ${MOST_MB})`);
	const isQuickStart = await startsWithin(empty, full);
	const found = medianOf('log ID') - medianOf('log ID, alone');
	console.log(`log ID above a home with that session alone: ${found.toFixed(0)} ms (limit ${MOST_MS_TO_FIND})`);
	const trend = medianOf('log --trend');
	console.log(`log --trend: ${trend.toFixed(0)} ms (limit ${MOST_TREND_MS})`);
	const isQuick = found <= MOST_MS_TO_FIND && trend <= MOST_TREND_MS;
	return isQuickStart && most <= MOST_MB && isQuick;
}

try {
	process.exitCode = (await run()) ? 0 : 1;
} finally {
	rmSync(folder, { recursive: true, force: true });
}
