/** kill -9 of the built program in the line mode, at moments that a seed draws: no acknowledged answer is lost, and resuming asks the right question. */
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { readLog } from '../../src/journal/read-log.ts';
import { ask } from '../../src/session/ask.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Output, SessionNote } from '../../src/session/protocol/notes.ts';
import { asLine } from '../../src/words/line-mode.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { draws, newMachine } from '../helpers/shop/plain-shop.ts';
import { must } from './subject.ts';

export const JOB = SAMPLE_JOBS.find((path) => path.includes('bow-rail'))!;

interface Sitting {
	outputs: Output[];
	answers: unknown[];
	/** How many answers were acknowledged: something other than a refusal was printed after them. */
	acknowledged: number;
	signal: NodeJS.Signals | null;
	code: number | null;
	/** What it said on standard error. */
	told: string;
}

/** Runs the program and answers every ask at once; after `asks` answers SIGKILL strikes `delay` milliseconds later, wherever the program then is. */
function sit(home: string, answer: (ask: Ask) => unknown, asks: number, delay: number): Promise<Sitting> {
	const child = spawn(process.execPath, [PROGRAM, 'bend', JOB, '--lines', '--home', home]);
	const sitting: Sitting = { outputs: [], answers: [], acknowledged: 0, signal: null, code: null, told: '' };
	let refused = 0;
	child.stderr.on('data', (data) => {
		sitting.told += String(data);
	});
	// What is written to a killed program goes nowhere.
	child.stdin.on('error', () => {});
	createInterface({ input: child.stdout }).on('line', (line) => {
		const output = JSON.parse(line) as Output;
		sitting.outputs.push(output);
		if ('note' in output && output.note === 'refused') refused += 1;
		sitting.acknowledged = sitting.answers.length - refused;
		if (!('ask' in output)) return;
		const given = answer(output);
		sitting.answers.push(given);
		child.stdin.write(`${JSON.stringify(given)}\n`);
		if (sitting.answers.length === asks) setTimeout(() => child.kill('SIGKILL'), delay);
	});
	return new Promise((resolve) => {
		child.on('close', (code, signal) => resolve({ ...sitting, code, signal }));
	});
}

/** Kills so many sittings; gives how many of them a kill struck: the others were done before. */
export async function killedInLines(home: string, seed: number, times: number): Promise<number> {
	const draw = draws(seed);
	let struck = 0;
	for (let time = 0; time < times; time++) {
		const operator = operatorAt(newMachine(seed + time));
		const asks = 1 + Math.floor(draw.uniform(0, 14));
		const sitting = await sit(home, (open) => operator.answer(open), asks, draw.uniform(0, 12));
		must(
			sitting.signal === 'SIGKILL' || sitting.code === 0,
			`sitting ${time} ended by ${sitting.signal ?? sitting.code}: ${sitting.told}`,
		);
		const log = await checked(home, sitting);
		if (sitting.signal === 'SIGKILL') struck++;
		rmSync(log);
	}
	return struck;
}

const bare = (asked: Ask | null) => JSON.stringify(asked && { ...asked, entry: 0 });
const lastAsk = (outputs: readonly Output[]) => outputs.findLast((output): output is Ask => 'ask' in output) ?? null;
const corrected = (outputs: readonly Output[]) =>
	JSON.stringify(outputs.findLast((output) => 'note' in output && output.note === 'corrected'));

/** Gives the log. */
async function checked(home: string, { outputs, answers, acknowledged, signal }: Sitting): Promise<string> {
	const { id, log } = outputs[0] as SessionNote;
	const { records, damage } = readLog(log);
	must(damage === null, `damaged in line ${damage?.line}`);
	const kept = records.filter(({ answer }) => answer !== undefined).length;
	must(kept >= acknowledged, `lost: ${kept} answers are kept, ${acknowledged} were acknowledged`);
	must(kept <= answers.length, `${kept} answers are kept, ${answers.length} were given`);
	if (signal !== 'SIGKILL') return log;
	const state = readBack(records);
	const open = ask(state);
	const right = bare(open && (asLine(open, state.start.job) as Ask));
	if (kept === acknowledged) must(bare(lastAsk(outputs)) === right, 'another question was shown than the log leads to');
	// What is left on the disk is what matters: going on with it takes no process of its own.
	const resumed = await runLineMode({ file: JOB, home, resume: id }, () => ({ quit: true }));
	must(resumed.code === 3, `resumed, it ended with ${resumed.code}: ${resumed.stderr}`);
	const [session] = resumed.outputs;
	must(
		session !== undefined && 'note' in session && session.note === 'session' && session.resumed,
		'it was not resumed',
	);
	must(bare(lastAsk(resumed.outputs)) === right, 'resumed, it asks another question');
	if (kept === acknowledged)
		must(corrected(resumed.outputs) === corrected(outputs), 'resumed, it has another correction');
	return log;
}
