import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLog } from '../../src/journal/read-log.ts';
import { ask } from '../../src/session/ask.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { CorrectedNote, Output, SessionNote } from '../../src/session/protocol/notes.ts';
import { asLine } from '../../src/words/line.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { draws, newMachine } from '../helpers/shop/plain-shop.ts';

const TIMES = 100;
const JOB = SAMPLE_JOBS.find((path) => path.includes('bow-rail'))!;
let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'kill-'));
});
afterAll(() => rmSync(home, { recursive: true }));

interface Sitting {
	outputs: Output[];
	answers: unknown[];
	/** How many answers were acknowledged: something other than a refusal was printed after them. */
	acknowledged: number;
	signal: NodeJS.Signals | null;
	code: number | null;
}

/**
 * Runs the real program and answers every ask at once; after `asks` answers SIGKILL strikes `delay` milliseconds later, wherever
 * the program then is.
 */
function sit(answer: (ask: Ask) => unknown, asks: number, delay: number): Promise<Sitting> {
	const child = spawn(process.execPath, [PROGRAM, 'bend', JOB, '--lines', '--home', home]);
	const sitting: Sitting = { outputs: [], answers: [], acknowledged: 0, signal: null, code: null };
	let refused = 0;
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

const bare = (asked: Ask | null) => asked && { ...asked, entry: 0 };
const lastAsk = (outputs: readonly Output[]) => outputs.findLast((output): output is Ask => 'ask' in output) ?? null;

describe('kill -9', () => {
	it(`at any moment loses no acknowledged answer, and resume asks the right question, ${TIMES} times`, {
		timeout: 280_000,
	}, async () => {
		const draw = draws(77);
		let struck = 0;
		for (let time = 0; time < TIMES; time++) {
			const operator = operatorAt(newMachine(900 + time));
			const asks = 1 + Math.floor(draw.uniform(0, 14));
			const sitting = await sit((open) => operator.answer(open), asks, draw.uniform(0, 12));
			expect(sitting.signal ?? sitting.code).toBeOneOf(['SIGKILL', 0]);
			const session = sitting.outputs[0] as SessionNote;
			const kept = readLog(session.log);
			expect(kept.damage).toBeNull();
			const answers = kept.records.slice(1).length;
			expect(answers).toBeGreaterThanOrEqual(sitting.acknowledged);
			expect(answers).toBeLessThanOrEqual(sitting.answers.length);
			if (sitting.signal !== 'SIGKILL') continue;
			struck++;
			const state = readBack(kept.records);
			const open = ask(state);
			const right = bare(open && (asLine(open, state.start.job) as Ask));
			if (answers === sitting.acknowledged) expect(bare(lastAsk(sitting.outputs))).toEqual(right);
			// What is left on the disk is what matters: going on with it takes no process of its own.
			const resumed = await runLineMode({ file: JOB, home, resume: session.id }, () => ({ quit: true }));
			expect(resumed.code, resumed.stderr).toBe(3);
			expect(resumed.outputs[0]).toMatchObject({ note: 'session', id: session.id, resumed: true, changed: [] });
			expect(bare(lastAsk(resumed.outputs))).toEqual(right);
			const corrected = (list: readonly Output[]) =>
				list.findLast((o): o is CorrectedNote => 'note' in o && o.note === 'corrected');
			if (answers === sitting.acknowledged) expect(corrected(resumed.outputs)).toEqual(corrected(sitting.outputs));
			rmSync(session.log);
		}
		expect(struck).toBeGreaterThan(TIMES / 2);
	});
});
