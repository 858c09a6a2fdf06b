import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { buildSync } from 'esbuild';
import { onTestFinished } from 'vitest';

/** A folder that goes when the test ends. */
export function tempFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'journal-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}

/** Bundles the child's program into the folder, so that it starts without a loader. */
export function buildChild(folder: string): string {
	const outfile = join(folder, 'log-child.mjs');
	const entry = new URL('../helpers/disk/log-child.ts', import.meta.url).pathname;
	buildSync({ entryPoints: [entry], outfile, bundle: true, platform: 'node', format: 'esm', target: 'node20' });
	return outfile;
}

export interface Child {
	process: ChildProcess;
	/** The next line it says; throws when it ends instead. */
	line(): Promise<string>;
	/** Kills it with no chance to tidy up, and waits until it is gone; gives the lines it had said and nobody had taken. */
	kill(): Promise<string[]>;
}

export function startChild(program: string, log: string, what: 'hold' | 'race' | 'write'): Child {
	const child = spawn(process.execPath, [program, log, what], { stdio: ['pipe', 'pipe', 'inherit'] });
	const exited = once(child, 'exit');
	onTestFinished(() => void child.kill('SIGKILL'));
	const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
	return {
		process: child,
		async line() {
			const next = await lines.next();
			if (next.done) throw new Error(`The child ended without a further line: ${child.exitCode}.`);
			return next.value;
		},
		async kill() {
			child.kill('SIGKILL');
			await exited;
			const rest: string[] = [];
			for (let next = await lines.next(); !next.done; next = await lines.next()) rest.push(next.value);
			return rest;
		},
	};
}
