import { EventEmitter } from 'node:events';
import { render } from 'ink';
import type { ReactElement } from 'react';
import { type KeySource, KeyStream } from '../../../src/terminal/key-stream.ts';
import { ScreenOutput, type Sink, type Size } from '../../../src/terminal/output.ts';
import { ShownScreen } from './shown-screen.ts';

/** A terminal without a window: its keyboard is `type`, and its screen can be read. */
export class HeadlessTerminal extends ShownScreen {
	readonly stdin: KeySource;
	readonly stdout: Sink;
	/** Whether raw mode is on. */
	rawMode = false;
	private readonly keyboard = new EventEmitter();
	private readonly window = new EventEmitter();

	constructor(size: Size) {
		super(size);
		const still = () => this.keyboard;
		const setRawMode = (on: boolean) => {
			this.rawMode = on;
		};
		const stdin = { isTTY: true, setRawMode, pause: still, resume: still, ref: still, unref: still };
		this.stdin = Object.assign(this.keyboard, stdin) as unknown as KeySource;
		const write = (text: string, done?: () => void) => {
			// A new line starts at the left, as the terminal driver sees to it.
			this.feed(text.replace(/\r?\n/g, '\r\n'), done);
			return true;
		};
		this.stdout = Object.assign(this.window, { isTTY: true, ...size, write }) as unknown as Sink;
	}

	/** Sends the bytes as one chunk. */
	type(text: string): void {
		this.keyboard.emit('data', Buffer.from(text));
	}

	/** The window was closed. */
	hangUp(): void {
		this.keyboard.emit('end');
	}

	override resize(size: Size): void {
		super.resize(size);
		Object.assign(this.stdout, size);
		this.window.emit('resize');
	}
}

export interface Mounted {
	terminal: HeadlessTerminal;
	unmount(): void;
}

/** Renders a tree as the program does: through a key stream and the painter, on a terminal of that size. */
export function mount(tree: ReactElement, size: Size, slow: () => boolean = () => false): Mounted {
	const terminal = new HeadlessTerminal(size);
	const keys = new KeyStream(terminal.stdin, { slow });
	const output = new ScreenOutput(terminal.stdout);
	const instance = render(tree, {
		stdin: keys as unknown as NodeJS.ReadStream,
		stdout: output as unknown as NodeJS.WriteStream,
		exitOnCtrlC: false,
		patchConsole: false,
		debug: true,
	});
	const unmount = () => {
		instance.unmount();
		keys.close();
		output.close();
	};
	return { terminal, unmount };
}
