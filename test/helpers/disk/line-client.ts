import { createInterface } from 'node:readline';
import { PassThrough } from 'node:stream';
import { type BendRequest, runBend } from '../../../src/cli/bend.ts';
import type { Io } from '../../../src/cli/io.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import type { Output } from '../../../src/session/protocol/notes.ts';

export interface LineRun {
	code: number;
	outputs: Output[];
	/** Answers given, in order. */
	answers: unknown[];
	stderr: string;
}

/** Runs the line mode over streams in this process: `answer` gets each ask and gives what to write, or null to end the input. */
export async function runLineMode(
	request: Pick<BendRequest, 'file' | 'home'> & Partial<BendRequest>,
	answer: (ask: Ask, soFar: readonly Output[]) => unknown,
): Promise<LineRun> {
	const stdin = new PassThrough();
	const stdout = new PassThrough();
	const stderr = new PassThrough();
	const outputs: Output[] = [];
	const answers: unknown[] = [];
	let said = '';
	stderr.on('data', (chunk) => {
		said += String(chunk);
	});
	createInterface({ input: stdout }).on('line', (line) => {
		const output = JSON.parse(line) as Output;
		outputs.push(output);
		if (!('ask' in output)) return;
		const given = answer(output, outputs);
		if (given === null) stdin.end();
		else {
			answers.push(given);
			stdin.write(`${typeof given === 'string' ? given : JSON.stringify(given)}\n`);
		}
	});
	const io = { stdin, stdout, stderr, env: {} } as unknown as Io;
	const code = await runBend(
		{ resume: null, learn: true, color: false, as: { mirror: false, from: 'start' }, ...request },
		io,
	);
	return { code, outputs, answers, stderr: said };
}
