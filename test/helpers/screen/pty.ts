import { type IPty, spawn } from '@lydell/node-pty';
import type { Size } from '../../../src/terminal/output.ts';
import { ShownScreen } from './shown-screen.ts';

export interface Ended {
	exitCode: number;
	/** The signal that ended it, or 0. */
	signal: number;
}

export interface PtyOptions extends Partial<Size> {
	cwd?: string;
	/** Added to the environment; undefined takes a variable out of it. */
	env?: Record<string, string | undefined>;
}

/** A program in a real pseudo-terminal, with what it shows. */
export class Pty extends ShownScreen {
	readonly ended: Promise<Ended>;
	private readonly pty: IPty;

	constructor(file: string, args: readonly string[], options: PtyOptions = {}) {
		const { columns = 80, rows = 24, cwd = process.cwd(), env = {} } = options;
		super({ columns, rows });
		const all = { ...process.env, TERM: 'xterm-256color', CI: undefined, NO_COLOR: undefined, ...env };
		const set = Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as Record<
			string,
			string
		>;
		this.pty = spawn(file, [...args], { name: set.TERM ?? 'xterm-256color', cols: columns, rows, cwd, env: set });
		this.pty.onData((data) => this.feed(data));
		this.ended = new Promise((resolve) => {
			this.pty.onExit(({ exitCode, signal }) => resolve({ exitCode, signal: signal ?? 0 }));
		});
	}

	get pid(): number {
		return this.pty.pid;
	}

	write(text: string): void {
		this.pty.write(text);
	}

	/** Types keys with so many milliseconds between them, as a person or an instrument would: 0 sends them without waiting. */
	async type(keys: Iterable<string>, gap: number): Promise<void> {
		for (const key of keys) {
			this.pty.write(key);
			if (gap > 0) await new Promise((resolve) => setTimeout(resolve, gap));
		}
	}

	override resize(size: Size): void {
		super.resize(size);
		this.pty.resize(size.columns, size.rows);
	}

	kill(signal = 'SIGKILL'): void {
		this.pty.kill(signal);
	}
}
