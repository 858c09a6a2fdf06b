/** kill -9 of the built program on the screen of a real pseudo-terminal, at moments that a seed draws, for as long as the processor may take. */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sessionFolder } from '../../src/journal/catalogue.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { ask } from '../../src/session/ask.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { asLine } from '../../src/words/line.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import type { Pty } from '../helpers/screen/pty.ts';
import { Sitting } from '../helpers/screen/sitting.ts';
import { draws } from '../helpers/shop/plain-shop.ts';
import { JOB } from './kill-lines.ts';
import { must } from './subject.ts';

/** A session of this job is over by then. */
const LONGEST_MS = 9000;
const TICKS_A_SECOND = 100;

/** Processor seconds that a process has used, by proc(5); 0 where the system does not tell, or it has ended. */
function secondsOf(pid: number): number {
	try {
		const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
		// The state stands behind the name in brackets; user and system time are 11 and 12 places on.
		const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
		return (Number(fields[11]) + Number(fields[12])) / TICKS_A_SECOND;
	} catch {
		return 0;
	}
}

const own = () => {
	const { user, system } = process.cpuUsage();
	return (user + system) / 1e6;
};

/** Kills sittings until `seconds` of processor are used, this process and its children together; gives how many. */
export async function killedOnScreen(folder: string, seed: number, seconds: number): Promise<number> {
	const draw = draws(seed);
	const began = own();
	let used = 0;
	let kills = 0;
	let saved = 0;
	while (own() - began + used < seconds) {
		const home = join(folder, String(kills));
		mkdirSync(home);
		const sitting = await killed(home, draw.uniform(0, LONGEST_MS));
		used += sitting.used;
		saved += Number(sitting.saved > 0);
		kills++;
	}
	must(saved > kills / 3, `only ${saved} of ${kills} kills came when a line was shown as saved`);
	return kills;
}

/** Kills one sitting so many milliseconds after its start, and looks at what is left; gives the processor seconds that it took, and the line it showed as saved. */
async function killed(home: string, after: number): Promise<{ used: number; saved: number }> {
	const sitting = new Sitting(home);
	const pty = sitting.start(80, 24, ['bend', JOB]);
	const playing = played(sitting, pty);
	await Promise.race([new Promise((resolve) => setTimeout(resolve, after)), playing]);
	const used = secondsOf(pty.pid);
	pty.kill('SIGKILL');
	await pty.ended;
	// What it showed last is what a person believes to be saved.
	const saved = Number(/Saved as line (\d+)/.exec(pty.text)?.[1] ?? 0);
	await check(home, saved);
	return { used, saved };
}

/** Plays on until the session is over, or the program is: a screen that nobody draws any more never shows what is waited for. */
async function played(sitting: Sitting, pty: Pty): Promise<void> {
	const whole = (async () => {
		await sitting.open(pty);
		await sitting.play(pty, () => false);
	})();
	await Promise.race([whole, pty.ended]);
	whole.catch(() => undefined);
}

async function check(home: string, saved: number): Promise<void> {
	const [name, ...more] = logsIn(home);
	must(more.length === 0, 'one session has left two logs');
	if (name === undefined) {
		must(saved === 0, 'what was shown as saved has no log');
		return;
	}
	const { records, damage } = readLog(join(sessionFolder(home), name));
	must(damage === null, `damaged in line ${damage?.line}`);
	must(records.length >= saved, `lost: ${records.length} lines are read, line ${saved} was shown as saved`);
	const state = readBack(records);
	const open = ask(state);
	if (open === null) return;
	const right = bare(asLine(open, state.start.job) as Ask);
	const resumed = await runLineMode({ file: JOB, home, resume: name.slice(0, -'.log'.length) }, () => ({ quit: true }));
	must(resumed.code === 3, `resumed, it ended with ${resumed.code}: ${resumed.stderr}`);
	const asked = resumed.outputs.findLast((output): output is Ask => 'ask' in output);
	must(asked !== undefined && bare(asked) === right, 'resumed, it asks another question');
}

const bare = (asked: Ask) => JSON.stringify({ ...asked, entry: 0 });

function logsIn(home: string): string[] {
	try {
		return readdirSync(sessionFolder(home)).filter((file) => file.endsWith('.log'));
	} catch {
		// Killed before the first line.
		return [];
	}
}
