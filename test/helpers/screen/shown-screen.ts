import { EventEmitter } from 'node:events';
import xterm from '@xterm/headless';
import type { Size } from '../../../src/terminal/output.ts';

/** How long a screen may take to show what a test waits for; a test that passes never waits it out. */
const PATIENCE_MS = 20_000;

/** What to wait for: a text, a pattern, or anything that can be told from the screen. */
export type Wanted = string | RegExp | ((screen: string) => boolean);

/** What a terminal shows of the bytes written to it. */
export class ShownScreen {
	/** Everything that was written. */
	raw = '';
	private readonly terminal: xterm.Terminal;
	private readonly parsed = new EventEmitter();

	constructor(size: Size) {
		this.terminal = new xterm.Terminal({ cols: size.columns, rows: size.rows, allowProposedApi: true });
		this.parsed.setMaxListeners(0);
	}

	/** Writes bytes; `done` is called once they have been taken in. */
	feed(text: string, done?: () => void): void {
		this.raw += text;
		this.terminal.write(text, () => {
			done?.();
			this.parsed.emit('parsed');
		});
	}

	/** The rows on the screen, without blanks at their ends. */
	get lines(): string[] {
		const { active } = this.terminal.buffer;
		return Array.from(
			{ length: this.terminal.rows },
			(_, row) => active.getLine(active.baseY + row)?.translateToString(true) ?? '',
		);
	}

	/** The screen as text, without blanks at the ends of its rows and blank rows at its end. */
	get text(): string {
		return this.lines
			.map((line) => line.trimEnd())
			.join('\n')
			.trimEnd();
	}

	/** How many rows have scrolled out of the screen that is shown. */
	get scrolledOut(): number {
		return this.terminal.buffer.active.baseY;
	}

	get alternate(): boolean {
		return this.terminal.buffer.active.type === 'alternate';
	}

	resize({ columns, rows }: Size): void {
		this.terminal.resize(columns, rows);
	}

	/** Resolves with the screen as soon as it shows what is wanted; rejects with the screen as it then is. */
	until(wanted: Wanted, patience = PATIENCE_MS): Promise<string> {
		return new Promise((resolve, reject) => {
			const done = () => {
				clearTimeout(timer);
				this.parsed.off('parsed', look);
			};
			const look = () => {
				if (!shows(this.text, wanted)) return;
				done();
				resolve(this.text);
			};
			const timer = setTimeout(() => {
				done();
				reject(new Error(`The screen never showed ${String(wanted)}. It shows:\n${this.text}`));
			}, patience);
			this.parsed.on('parsed', look);
			look();
		});
	}
}

function shows(screen: string, wanted: Wanted): boolean {
	if (typeof wanted === 'function') return wanted(screen);
	return typeof wanted === 'string' ? screen.includes(wanted) : wanted.test(screen);
}
