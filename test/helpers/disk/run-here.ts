import { PassThrough } from 'node:stream';
import { readCommandLine } from '../../../src/cli/args.ts';
import type { Io } from '../../../src/cli/io.ts';
import { reportError } from '../../../src/cli/report.ts';
import { runCommand } from '../../../src/cli/run-command.ts';
import { root } from './program.ts';

/** The streams that a command writes to and reads from. */
interface Pipes {
	stdin: PassThrough;
	stdout: PassThrough;
	stderr: PassThrough;
}

/** Runs a command to its end as `main.ts` does, in the process that is here already. Resolves to the exit code. */
export async function runWith(pipes: Pipes, args: readonly string[], home: string): Promise<number> {
	const io = { ...pipes, env: { ...process.env, PULLBOOK_HOME: home } } as unknown as Io;
	try {
		return await runCommand(readCommandLine(args), io, `${root}jobs`);
	} catch (error) {
		return reportError(error, io.stderr, args.includes('--debug'));
	}
}

/**
 * The same with pipes for its streams: the program is loaded once, not once a command. What belongs to a process of its own (signals, closed
 * output, its start) is for `runProgram`.
 */
export async function runHere(args: readonly string[], { input = '', home }: { input?: string; home: string }) {
	const run = { code: 0, out: '', err: '' };
	const stream = (to: 'out' | 'err') => new PassThrough().on('data', (chunk: Buffer) => (run[to] += chunk.toString()));
	const stdin = new PassThrough();
	stdin.end(input);
	run.code = await runWith({ stdin, stdout: stream('out'), stderr: stream('err') }, args, home);
	return run;
}
