import { EventEmitter } from 'node:events';
import xterm from '@xterm/headless';
import { type Instance, render } from 'ink';
import type { ReactElement } from 'react';
import { type KeySource, KeyStream } from '../../src/terminal/key-stream.ts';
import { ScreenOutput, type Sink, type Size } from '../../src/terminal/output.ts';

/** How long a screen may take to show what a test waits for; a test that passes never waits it out. */
const PATIENCE_MS = 10_000;

/** A terminal without a window: its keyboard is `type`, its screen `screen`. */
export class HeadlessTerminal {
	/** Everything that was written to it. */
	raw = '';
	readonly stdin: KeySource;
	readonly stdout: Sink;
	private readonly keyboard = new EventEmitter();
	private readonly output = new EventEmitter();
	private readonly terminal: xterm.Terminal;
	private readonly parsed = new EventEmitter();

	constructor(size: Size) {
		this.terminal = new xterm.Terminal({ cols: size.columns, rows: size.rows, allowProposedApi: true });
		this.parsed.setMaxListeners(0);
		this.stdin = Object.assign(this.keyboard, {
			isTTY: true,
			setRawMode: () => {},
			pause: () => this.keyboard,
			resume: () => this.keyboard,
			ref: () => this.keyboard,
			unref: () => this.keyboard,
		}) as unknown as KeySource;
		this.stdout = Object.assign(this.output, {
			isTTY: true,
			columns: size.columns,
			rows: size.rows,
			write: (text: string, done?: () => void) => {
				this.raw += text;
				// As a terminal in cooked output mode does.
				this.terminal.write(text.replace(/\r?\n/g, '\r\n'), () => {
					done?.();
					this.parsed.emit('parsed');
				});
				return true;
			},
		}) as unknown as Sink;
	}

	/** Sends the bytes as one chunk. */
	type(text: string): void {
		this.keyboard.emit('data', Buffer.from(text));
	}

	/** The lines on the screen, without blanks at their ends. */
	get lines(): string[] {
		const buffer = this.terminal.buffer.active;
		return Array.from(
			{ length: this.terminal.rows },
			(_, row) => buffer.getLine(buffer.baseY + row)?.translateToString(true) ?? '',
		);
	}

	/** The screen as text, without blank lines at its end. */
	get screen(): string {
		return this.lines.join('\n').trimEnd();
	}

	/** How many lines have been scrolled out of the main screen. */
	get scrolledOut(): number {
		return this.terminal.buffer.normal.baseY;
	}

	get alternate(): boolean {
		return this.terminal.buffer.active.type === 'alternate';
	}

	resize({ columns, rows }: Size): void {
		this.terminal.resize(columns, rows);
		Object.assign(this.stdout, { columns, rows });
		this.output.emit('resize');
	}

	/** Resolves with the screen as soon as it shows what is looked for; rejects with the screen as it then is. */
	until(wanted: string | RegExp | ((screen: string) => boolean)): Promise<string> {
		const found = (screen: string) =>
			typeof wanted === 'function'
				? wanted(screen)
				: typeof wanted === 'string'
					? screen.includes(wanted)
					: wanted.test(screen);
		return new Promise((resolve, reject) => {
			const look = () => {
				if (!found(this.screen)) return;
				clearTimeout(timer);
				this.parsed.off('parsed', look);
				resolve(this.screen);
			};
			const timer = setTimeout(() => {
				this.parsed.off('parsed', look);
				reject(new Error(`The screen never showed ${String(wanted)}. It shows:\n${this.screen}`));
			}, PATIENCE_MS);
			this.parsed.on('parsed', look);
			look();
		});
	}
}

/** Renders a tree as the program does: through a key stream and the painter, on a terminal of that size. */
export function mount(
	tree: ReactElement,
	size: Size,
	slow: () => boolean = () => false,
): { terminal: HeadlessTerminal; unmount(): void } {
	const terminal = new HeadlessTerminal(size);
	const keys = new KeyStream(terminal.stdin, { slow });
	const output = new ScreenOutput(terminal.stdout);
	const instance: Instance = render(tree, {
		stdin: keys as unknown as NodeJS.ReadStream,
		stdout: output as unknown as NodeJS.WriteStream,
		exitOnCtrlC: false,
		patchConsole: false,
		debug: true,
	});
	return {
		terminal,
		unmount: () => {
			instance.unmount();
			keys.close();
			output.close();
		},
	};
}
