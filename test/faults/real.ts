/** Real faults on real disks. What needs rights or tools that are not there is left out by name. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { buildSync } from 'esbuild';
import { Locked, NotSaved } from '../../src/journal/errors.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { draws } from '../helpers/shop/plain-shop.ts';
import { killedExchanges } from './kill-exchange.ts';
import { killedInLines } from './kill-lines.ts';
import { killedOnScreen } from './kill-screen.ts';
import { cutAnywhere, flippedAnywhere, refusal, strange } from './spoilt.ts';
import { Broken, must } from './subject.ts';

/** Where the whole of a run is to stay under ten minutes, as in `.ci/run`. */
const FEW = process.env.PULLBOOK_KILLS === 'few';
const WRITER_KILLS = 20;
const LINE_KILLS = FEW ? 40 : 200;
const SCREEN_KILLS = FEW ? 8 : 200;
const EXCHANGE_KILLS = 15;
/** Lines that a writer says before it is killed, at most. */
const MOST_LINES = 40;

/** How many faults were put in; or why it could not be tried. */
type Outcome = number | { leftOut: string };

interface Trial {
	name: string;
	/** `seed` draws the moments. */
	run(folder: string, seed: number): Promise<Outcome> | Outcome;
}

const childOf = (folder: string): string => {
	const outfile = join(folder, 'log-child.mjs');
	const entry = new URL('../helpers/disk/log-child.ts', import.meta.url).pathname;
	buildSync({ entryPoints: [entry], outfile, bundle: true, platform: 'node', format: 'esm', target: 'node20' });
	return outfile;
};

/** Runs a writer of the log, killed after so many lines, or to its own end; gives the number of the last record that it called saved. */
async function written(command: readonly string[], log: string, killAfter = Number.POSITIVE_INFINITY): Promise<number> {
	const [program = '', ...args] = command;
	const child = spawn(program, [...args, log, 'write'], { stdio: ['pipe', 'pipe', 'ignore'] });
	const exited = once(child, 'exit');
	let acked = -1;
	let said = 0;
	for await (const line of createInterface({ input: child.stdout })) {
		acked = Number(line);
		if (++said === killAfter) child.kill('SIGKILL');
	}
	await exited;
	return acked;
}

/** All that was acknowledged is read, and one more line can be added. */
function checkKept(log: string, acked: number): void {
	const { records, damage } = readLog(log);
	must(damage === null, `damaged in line ${damage?.line}`);
	must(records.length > acked, `lost: ${records.length} lines are read, ${acked + 1} were called saved`);
	must(records.length <= acked + 2, 'more lines than were sent');
	const opened = openLog(log, { now: new Date() });
	opened.log.append({ seq: opened.log.count, v: 1, at: new Date().toISOString(), further: true });
	opened.log.close();
	must(readLog(log).records.at(-1)?.further === true, 'one more line was not read back');
}

/** A small disk in memory, mounted for the time of the trial. */
async function onSmallDisk(folder: string, trial: (disk: string) => Promise<Outcome> | Outcome): Promise<Outcome> {
	const disk = join(folder, 'disk');
	mkdirSync(disk);
	const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', disk]);
	if (mounted.status !== 0) return { leftOut: 'mounting a disk needs rights that are not there' };
	try {
		return await trial(disk);
	} finally {
		spawnSync('umount', ['-l', disk]);
	}
}

async function killWriter(folder: string, seed: number): Promise<Outcome> {
	const draw = draws(seed);
	const program = childOf(folder);
	const log = join(folder, 'sessions', 'a.log');
	for (let n = 0; n < WRITER_KILLS; n++) {
		const acked = await written([process.execPath, program], log, 1 + Math.floor(draw.uniform(0, MOST_LINES)));
		checkKept(log, acked);
	}
	return WRITER_KILLS;
}

async function killLines(folder: string, seed: number): Promise<Outcome> {
	const struck = await killedInLines(folder, seed, LINE_KILLS);
	must(struck > LINE_KILLS / 2, `only ${struck} of ${LINE_KILLS} kills came before the end`);
	return struck;
}

const full = (folder: string): Promise<Outcome> =>
	onSmallDisk(folder, async (disk) => {
		const filler = join(disk, 'filler');
		writeFileSync(filler, Buffer.alloc(20_000));
		const log = join(disk, 'a.log');
		const acked = await written([process.execPath, childOf(folder)], log);
		const { records, damage, tail } = readLog(log);
		must(damage === null && tail === null, 'a full disk left a part of a line');
		must(records.length === acked + 1, `${records.length} lines are read, ${acked + 1} were called saved`);
		rmSync(filler);
		checkKept(log, acked);
		return 1;
	});

const readOnly = (folder: string): Promise<Outcome> =>
	onSmallDisk(folder, async (disk) => {
		const log = join(disk, 'a.log');
		const acked = await written([process.execPath, childOf(folder)], log, 5);
		const remount = (how: string) => spawnSync('mount', ['-o', `remount,${how}`, disk]).status === 0;
		if (!remount('ro')) return { leftOut: 'the disk could not be made read-only' };
		const rescue = join(folder, 'stick');
		must(
			refusal(() => openLog(log, { now: new Date() })) instanceof NotSaved,
			'a read-only log was opened to be written',
		);
		const away = openLog(log, { now: new Date(), rescue });
		away.log.append({ seq: away.log.count, v: 1, at: new Date().toISOString(), away: true });
		away.log.close();
		remount('rw');
		const home = openLog(log, { now: new Date(), rescue });
		home.log.close();
		must(home.log.path === log && home.records.at(-1)?.away === true, 'what was written elsewhere did not come home');
		checkKept(log, home.records.length - 1);
		must(home.records.length > acked, 'lines were lost on the way');
		return 2;
	});

async function failedFlush(folder: string): Promise<Outcome> {
	if (spawnSync('strace', ['-V']).error !== undefined) return { leftOut: 'strace is not there' };
	const program = childOf(folder);
	for (const [n, errno] of (['EIO', 'ENOSPC', 'EDQUOT'] as const).entries()) {
		const log = join(folder, `${errno}.log`);
		const inject = `inject=fdatasync:error=${errno}:when=${3 + n}`;
		const command = ['strace', '-f', '-qq', '-o', '/dev/null', '-e', 'trace=fdatasync', '-e', inject];
		const acked = await written([...command, process.execPath, program], log);
		if (acked < 0) return { leftOut: 'strace may not look into another process' };
		checkKept(log, acked);
	}
	return 3;
}

async function threeAtOnce(folder: string): Promise<Outcome> {
	const program = childOf(folder);
	const log = join(folder, 'a.log');
	await written([process.execPath, program], log, 3);
	const holder = openLog(log, { now: new Date() });
	for (let n = 0; n < 2; n++) must((await written([process.execPath, program], log)) === -1, 'two wrote one log');
	must(refusal(() => openLog(log, { now: new Date() })) instanceof Locked, 'the holder itself opened it twice');
	holder.log.close();
	checkKept(log, holder.records.length - 1);
	return 3;
}

function wrongClock(folder: string): Outcome {
	const years = [2026, 2019, 2041, 2026];
	let id = '';
	for (const [n, year] of years.entries()) {
		const now = () => new Date(Date.UTC(year, 0, 1, 8));
		const world = { home: folder, program: 'test', now, random: () => 'ab12' };
		const job = { job: plainJob(), path: '/none.json', raw: {} };
		const session = n === 0 ? LiveSession.begin(world, job, false, []) : LiveSession.resume(world, id, {}, []);
		id = session.id;
		session.answerText(JSON.stringify({ note: `in ${year}` }));
		const notes = session.state.entries.flatMap(({ events }) => events.filter(({ type }) => type === 'note-written'));
		must(notes.length === n + 1, `after the clock said ${year} there are ${notes.length} notes`);
		session.close();
	}
	return years.length;
}

function foldersGone(folder: string): Outcome {
	const world = { home: folder, program: 'test', now: () => new Date(), random: () => 'ab12' };
	const session = LiveSession.begin(world, { job: plainJob(), path: '/none.json', raw: {} }, false, []);
	rmSync(join(folder, 'sessions'), { recursive: true });
	const [refused] = session.answerText('{"note":"gone"}');
	must(
		refused !== undefined && 'note' in refused && refused.note === 'refused',
		'an answer was taken without a folder',
	);
	must(session.isLost, 'a log whose folder is gone is not lost');
	session.rescue(join(folder, 'stick'));
	session.answerText('{"note":"there"}');
	session.close();
	must(
		existsSync(session.logPath) && readLog(session.logPath).records.length === 2,
		'the answer is not in the new folder',
	);
	return 1;
}

const TRIALS: readonly Trial[] = [
	{ name: `kill -9 of a writer at ${WRITER_KILLS} random moments`, run: killWriter },
	{ name: `kill -9 of the line mode at ${LINE_KILLS} random moments`, run: killLines },
	{
		name: `kill -9 on the screen at ${SCREEN_KILLS} random moments`,
		run: (folder, seed) => killedOnScreen(folder, seed, SCREEN_KILLS),
	},
	{
		name: `kill -9 of export and import, ${EXCHANGE_KILLS} times each`,
		run: (folder, seed) => killedExchanges(folder, seed, EXCHANGE_KILLS),
	},
	{ name: 'a small disk that fills up', run: full },
	{ name: 'a disk that turns read-only, and back', run: readOnly },
	{ name: 'a flush that fails (EIO, ENOSPC, EDQUOT)', run: failedFlush },
	{ name: 'three sessions on one log', run: threeAtOnce },
	{ name: 'a clock set back and forward', run: wrongClock },
	{ name: 'a folder that is removed', run: foldersGone },
	{ name: 'a log cut at every byte', run: cutAnywhere },
	{ name: 'a log with each bit flipped', run: flippedAnywhere },
	{ name: 'a log of a later version, and files of another program', run: strange },
];

/** Tries them all; gives how many faults were put in and what did not hold, and prints a line for each. */
export async function realFaults(seed: number): Promise<{ faults: number; broken: string[] }> {
	const sum = { faults: 0, broken: [] as string[] };
	for (const { name, run } of TRIALS) {
		const folder = mkdtempSync(join(tmpdir(), 'pullbook-faults-'));
		try {
			const outcome = await run(folder, seed);
			if (typeof outcome === 'number') sum.faults += outcome;
			console.log(
				`${name}: ${typeof outcome === 'number' ? `held, ${outcome} faults` : `left out, ${outcome.leftOut}`}`,
			);
		} catch (error) {
			sum.broken.push(`${name}: ${error instanceof Broken ? error.message : String(error)}`);
			console.log(`${name}: did NOT hold`);
		} finally {
			rmSync(folder, { recursive: true, force: true });
		}
	}
	return sum;
}
