import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, with a slash at its end. */
export const root = fileURLToPath(new URL('../../..', import.meta.url));

/** The one program file, as `npm run build` makes it. */
export const PROGRAM = join(root, '.build', 'pullbook.js');

/** The sample jobs, as whole paths. */
export const SAMPLE_JOBS = readdirSync(join(root, 'jobs'))
	.filter((name) => name.endsWith('.json'))
	.map((name) => join(root, 'jobs', name));

export interface Run {
	/** Null when a signal ended it. */
	code: number | null;
	out: string;
	err: string;
}
export interface RunOptions {
	/** All that stands on standard input; then it ends. */
	input?: string;
	/** Where the program keeps its logs. */
	home: string;
	env?: NodeJS.ProcessEnv;
	/** A file descriptor to write standard output to instead of a pipe, or `closed`: a reader that went away. */
	out?: number | 'closed';
}

/** Runs the built program in pipes, to its end. */
export function runProgram(args: readonly string[], { input = '', home, env, out }: RunOptions): Promise<Run> {
	const child = spawn(process.execPath, [PROGRAM, ...args], {
		cwd: root,
		env: { ...process.env, PULLBOOK_HOME: home, ...env },
		stdio: ['pipe', typeof out === 'number' ? out : 'pipe', 'pipe'],
	});
	const run: Run = { code: null, out: '', err: '' };
	if (out === 'closed') child.stdout?.destroy();
	else child.stdout?.setEncoding('utf8').on('data', (text: string) => (run.out += text));
	child.stderr?.setEncoding('utf8').on('data', (text: string) => (run.err += text));
	// A program that has ended already reads no more: that is its own affair.
	child.stdin?.on('error', () => {});
	child.stdin?.end(input);
	return new Promise((resolve, reject) => {
		child.on('error', reject);
		child.on('close', (code) => resolve({ ...run, code }));
	});
}
