/** kill -9 of the built program on the screen of a real pseudo-terminal, at moments that a seed draws. */
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { sessionFolder } from '../../src/journal/catalogue.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { ask } from '../../src/session/ask.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { asLine } from '../../src/words/line-mode.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import type { Pty } from '../helpers/screen/pty.ts';
import { Sitting } from '../helpers/screen/sitting.ts';
import { draws } from '../helpers/shop/plain-shop.ts';
import { JOB } from './kill-lines.ts';
import { must } from './subject.ts';

/** Most sessions of this job are over by then. */
const MOST_ASKS = 12;
/** While a key is taken in, saved and shown. */
const LONGEST_MS = 400;
/** While the program starts, where nothing is asked yet. */
const START_MS = 2500;

/** When a kill strikes: so many milliseconds after the question of that number was there; null: after the start. */
interface Moment {
	asks: number | null;
	delay: number;
}

function drawnMoment(draw: ReturnType<typeof draws>): Moment {
	const asks = Math.floor(draw.uniform(-1, MOST_ASKS));
	return asks < 0 ? { asks: null, delay: draw.uniform(0, START_MS) } : { asks, delay: draw.uniform(0, LONGEST_MS) };
}

/** Kills so many sittings; gives how many. */
export async function killedOnScreen(folder: string, seed: number, times: number): Promise<number> {
	const draw = draws(seed);
	let saved = 0;
	for (let n = 0; n < times; n++) {
		const home = join(folder, String(n));
		mkdirSync(home);
		saved += Number((await killed(home, drawnMoment(draw))) > 0);
	}
	must(saved > times / 5, `only ${saved} of ${times} kills came when a line was shown as saved`);
	return times;
}

/** Kills one sitting, and looks at what is left; gives the line that it showed as saved. */
async function killed(home: string, { asks, delay }: Moment): Promise<number> {
	const sitting = new Sitting(home);
	const pty = sitting.start(80, 24, ['bend', JOB]);
	await new Promise<void>((resolve) => {
		const strike = () => setTimeout(resolve, delay);
		if (asks === null) strike();
		played(sitting, pty, asks ?? Number.POSITIVE_INFINITY, strike).then(() => resolve());
	});
	pty.kill('SIGKILL');
	await pty.ended;
	// What it showed last is what a person believes to be saved.
	const saved = Number(/Saved as line (\d+)/.exec(pty.text)?.[1] ?? 0);
	await check(home, saved);
	return saved;
}

/** Plays on until the session is over, or the program is: a screen that nobody draws any more never shows what is waited for. `reached`: so many were answered. */
async function played(sitting: Sitting, pty: Pty, asks: number, reached: () => void): Promise<void> {
	let asked = 0;
	const whole = (async () => {
		await sitting.open(pty);
		await sitting.play(pty, () => {
			if (asked++ === asks) reached();
			return false;
		});
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
