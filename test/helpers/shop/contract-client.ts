import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { PROGRAM } from '../disk/program.ts';

/** A line as any program would see it: nothing of its form is taken for granted. */
// biome-ignore lint/suspicious/noExplicitAny: the forms are what the tests find out
export type Line = Record<string, any>;

/** The line mode from outside: another program at the other end of two pipes. */
export class LineTalk {
	/** Every line printed so far. */
	readonly lines: Line[] = [];
	readonly raw: string[] = [];
	stderr = '';
	readonly #child: ChildProcessWithoutNullStreams;
	readonly #ended: Promise<number | string>;
	#rest = '';
	#wake: () => void = () => {};
	#over = false;

	constructor(args: readonly string[], env: NodeJS.ProcessEnv = {}, program = PROGRAM) {
		this.#child = spawn(process.execPath, [program, ...args], { env: { ...process.env, ...env } });
		this.#child.stdout.setEncoding('utf8').on('data', (text: string) => this.#take(text));
		this.#child.stderr.setEncoding('utf8').on('data', (text: string) => {
			this.stderr += text;
		});
		// A program that has ended reads no more; its exit code tells.
		this.#child.stdin.on('error', () => {});
		this.#ended = new Promise((resolve) => {
			this.#child.on('close', (code, signal) => {
				this.#over = true;
				this.#wake();
				resolve(code ?? signal ?? 'nothing');
			});
		});
	}

	#take(text: string): void {
		const parts = (this.#rest + text).split('\n');
		this.#rest = parts.pop() ?? '';
		for (const part of parts) {
			this.raw.push(part);
			this.lines.push(JSON.parse(part));
		}
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
		this.#child.stdin.write(`${typeof answer === 'string' ? answer : JSON.stringify(answer)}\n`);
		return this.until(from);
	}

	/** The ask that is open. */
	get ask(): Line {
		return this.lines.findLast((line) => 'ask' in line) as Line;
	}

	write(text: string): void {
		this.#child.stdin.write(text);
	}
	signal(name: NodeJS.Signals): Promise<number | string> {
		this.#child.kill(name);
		return this.#ended;
	}
	closeOutput(): void {
		this.#child.stdout.destroy();
	}
	/** Ends the input; the exit code, or the signal's name. */
	end(): Promise<number | string> {
		this.#child.stdin.end();
		return this.#ended;
	}
	get ended(): Promise<number | string> {
		return this.#ended;
	}
}
