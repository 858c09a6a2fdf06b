import { PassThrough } from 'node:stream';
import { readCommandLine } from '../../../src/cli/args.ts';
import type { Io } from '../../../src/cli/io.ts';
import { reportError } from '../../../src/cli/report.ts';
import { runCommand } from '../../../src/cli/run-command.ts';
import { root } from './program.ts';

/**
 * Runs a command to its end as `main.ts` does, with pipes for its streams, in the process that is here already: the program is loaded once, not
 * once a command. What belongs to a process of its own (signals, closed output, its start) is for `runProgram`.
 */
export async function runHere(args: readonly string[], { input = '', home }: { input?: string; home: string }) {
	const run = { code: 0, out: '', err: '' };
	const stream = (to: 'out' | 'err') => new PassThrough().on('data', (chunk: Buffer) => (run[to] += chunk.toString()));
	const stdin = new PassThrough();
	stdin.end(input);
	const env = { ...process.env, PULLBOOK_HOME: home };
	const io = { stdin, stdout: stream('out'), stderr: stream('err'), env } as unknown as Io;
	try {
		run.code = await runCommand(readCommandLine(args), io, `${root}jobs`);
	} catch (error) {
		run.code = reportError(error, io.stderr, args.includes('--debug'));
	}
	return run;
}
