/** kill -9 of `log export` and `log import` in their middle: what lies in the folder is whole, and done again all is there once. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { sessionFolder } from '../../src/journal/catalogue.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { PROGRAM, runProgram } from '../helpers/disk/program.ts';
import { draws } from '../helpers/shop/plain-shop.ts';
import { must } from './subject.ts';

const SESSIONS = 25;
/** By then the program has copied them all. */
const LONGEST_MS = 900;

/** Kills so many exports, each followed by a whole one, and so many imports; gives how many. */
export async function killedExchanges(folder: string, seed: number, times: number): Promise<number> {
	const draw = draws(seed);
	const here = join(folder, 'here');
	for (let day = 1; day <= SESSIONS; day++) bendIn(here, { day, answers: 3 + (day % 4) });
	const right = logsIn(sessionFolder(here));
	for (let n = 0; n < times; n++) {
		const [shared, there] = [join(folder, `shared-${n}`), join(folder, `there-${n}`)];
		await killed(['log', 'export', shared], here, draw.uniform(0, LONGEST_MS));
		checkPart(logsIn(shared), right);
		await whole(['log', 'export', shared], here);
		checkAll(logsIn(shared), right);
		await killed(['log', 'import', shared], there, draw.uniform(0, LONGEST_MS));
		checkPart(logsIn(sessionFolder(there)), right);
		await whole(['log', 'import', shared], there);
		checkAll(logsIn(sessionFolder(there)), right);
		const marks = readdirSync(sessionFolder(there)).filter((name) => name.endsWith('.imported'));
		must(marks.length === SESSIONS, `${marks.length} of ${SESSIONS} sessions are marked as imported`);
		for (const each of [shared, there]) rmSync(each, { recursive: true });
	}
	return 2 * times;
}

async function killed(args: readonly string[], home: string, after: number): Promise<void> {
	const child = spawn(process.execPath, [PROGRAM, ...args, '--home', home], { stdio: 'ignore' });
	const exited = once(child, 'exit');
	setTimeout(() => child.kill('SIGKILL'), after);
	await exited;
}

async function whole(args: readonly string[], home: string): Promise<void> {
	const run = await runProgram(args, { home });
	must(run.code === 0, `pullbook ${args.join(' ')} ended with ${run.code}: ${run.out}${run.err}`);
}

type Logs = ReadonlyMap<string, string>;

function logsIn(folder: string): Logs {
	mkdirSync(folder, { recursive: true });
	const names = readdirSync(folder).filter((name) => name.endsWith('.log'));
	return new Map(names.map((name) => [name, readFileSync(join(folder, name), 'latin1')]));
}

function checkPart(logs: Logs, right: Logs): void {
	for (const [name, text] of logs) must(right.get(name) === text, `a part of a log, or another one, stands as ${name}`);
}

function checkAll(logs: Logs, right: Logs): void {
	checkPart(logs, right);
	must(logs.size === right.size, `${logs.size} of ${right.size} sessions are there`);
}
