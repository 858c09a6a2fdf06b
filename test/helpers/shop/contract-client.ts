import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { PassThrough } from 'node:stream';
import { PROGRAM } from '../disk/program.ts';
import { runWith } from '../disk/run-here.ts';

/** A line as any program would see it: nothing of its form is taken for granted. */
// biome-ignore lint/suspicious/noExplicitAny: the forms are what the tests find out
export type Line = Record<string, any>;

/** The line mode as another program has it at the other end of two pipes. */
export abstract class Talk {
	/** Every line printed so far. */
	readonly lines: Line[] = [];
	readonly raw: string[] = [];
	stderr = '';
	#rest = '';
	#wake: () => void = () => {};
	#over = false;

	abstract write(text: string): void;
	/** Ends the input; the exit code, or the signal's name. */
	abstract end(): Promise<number | string>;

	protected take(text: string): void {
		const parts = (this.#rest + text).split('\n');
		this.#rest = parts.pop() ?? '';
		for (const part of parts) {
			this.raw.push(part);
			this.lines.push(JSON.parse(part));
		}
		this.#wake();
	}

	/** Nothing more comes. */
	protected over(): void {
		this.#over = true;
		this.#wake();
	}

	/** What is printed from line `from` on, up to the next ask or the end of the program. */
	async until(from: number): Promise<Line[]> {
		while (!this.#over && !this.lines.slice(from).some((line) => 'ask' in line)) {
			await new Promise<void>((resolve) => {
				this.#wake = resolve;
			});
		}
		return this.lines.slice(from);
	}

	/** The lines printed before the first answer. */
	begin(): Promise<Line[]> {
		return this.until(0);
	}

	/** Sends one answer, as JSON or as the very text given, and gets what came of it. */
	async send(answer: object | string): Promise<Line[]> {
		const from = this.lines.length;
		this.write(`${typeof answer === 'string' ? answer : JSON.stringify(answer)}\n`);
		return this.until(from);
	}

	/** The ask that is open. */
	get ask(): Line {
		return this.lines.findLast((line) => 'ask' in line) as Line;
	}
}

/** With the built program, in a process of its own. */
export class LineTalk extends Talk {
	readonly ended: Promise<number | string>;
	readonly #child: ChildProcessWithoutNullStreams;

	constructor(args: readonly string[], env: NodeJS.ProcessEnv = {}, program = PROGRAM) {
		super();
		this.#child = spawn(process.execPath, [program, ...args], { env: { ...process.env, ...env } });
		this.#child.stdout.setEncoding('utf8').on('data', (text: string) => this.take(text));
		this.#child.stderr.setEncoding('utf8').on('data', (text: string) => {
			this.stderr += text;
		});
		// A program that has ended reads no more; its exit code tells.
		this.#child.stdin.on('error', () => {});
		this.ended = new Promise((resolve) => {
			this.#child.on('close', (code, signal) => {
				this.over();
				resolve(code ?? signal ?? 'nothing');
			});
		});
	}

	write(text: string): void {
		this.#child.stdin.write(text);
	}
	signal(name: NodeJS.Signals): Promise<number | string> {
		this.#child.kill(name);
		return this.ended;
	}
	closeOutput(): void {
		this.#child.stdout.destroy();
	}
	end(): Promise<number | string> {
		this.#child.stdin.end();
		return this.ended;
	}
}

/** With the program in the process that is here already. Signals, closed pipes and starts are for `LineTalk`. */
export class TalkHere extends Talk {
	readonly #stdin = new PassThrough();
	readonly #ended: Promise<number>;

	constructor(args: readonly string[], home: string) {
		super();
		const out = new PassThrough().setEncoding('utf8').on('data', (text: string) => this.take(text));
		const err = new PassThrough().setEncoding('utf8').on('data', (text: string) => {
			this.stderr += text;
		});
		this.#ended = runWith({ stdin: this.#stdin, stdout: out, stderr: err }, args, home).finally(() => this.over());
	}

	write(text: string): void {
		this.#stdin.write(text);
	}
	end(): Promise<number> {
		this.#stdin.end();
		return this.#ended;
	}
}
