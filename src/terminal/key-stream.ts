import { Readable } from 'node:stream';
import { StringDecoder } from 'node:string_decoder';
import { ESCAPE, INTERRUPT, SUSPEND } from './key-codes.ts';
import { KeyParser } from './key-parser.ts';

/** What the key stream needs of the terminal's input. */
export type KeySource = Pick<NodeJS.ReadStream, 'on' | 'off' | 'pause' | 'resume' | 'ref' | 'unref'> & {
	isTTY?: boolean;
	setRawMode?(on: boolean): unknown;
};

export interface KeyStreamOptions {
	/** Whether a text field has the focus now: it takes in a key over several turns of the event loop. */
	slow?: () => boolean;
	/** How long an unfinished sequence may wait for its rest. */
	patience?: number;
}

/** ink-text-input subscribes anew after every key, in an effect: fewer turns lose keys (measured). */
const SLOW_TURNS = 4;

/**
 * The terminal's keys, one a chunk and one a turn of the event loop, for Ink's `stdin`. Emits `interrupt` for Ctrl-C before all keys that wait,
 * which are forgotten, `suspend` for Ctrl-Z in its place among them, and `gone` when the terminal has hung up.
 */
export class KeyStream extends Readable {
	readonly isTTY: boolean;
	private readonly parser = new KeyParser();
	private readonly decoder = new StringDecoder('utf8');
	private readonly queue: string[] = [];
	private readonly slow: () => boolean;
	private readonly patience: number;
	private turnsToWait = 0;
	private pumping = false;
	private expiry: NodeJS.Timeout | undefined;

	constructor(
		private readonly source: KeySource,
		options: KeyStreamOptions = {},
	) {
		// A high water mark of 0 keeps the stream from reading ahead of whoever reads it.
		super({ objectMode: true, highWaterMark: 0 });
		this.isTTY = source.isTTY === true;
		this.slow = options.slow ?? (() => false);
		this.patience = options.patience ?? 50;
		source.on('data', this.receive);
		source.on('end', this.lose);
		source.on('error', this.lose);
	}

	setRawMode(on: boolean): this {
		this.source.setRawMode?.(on);
		return this;
	}

	ref(): this {
		this.source.ref();
		return this;
	}

	unref(): this {
		this.source.unref();
		return this;
	}

	/** The chunks are text already; Readable's own would join waiting keys into one. */
	override setEncoding(): this {
		return this;
	}

	override _read(): void {
		this.pump();
	}

	/** Stops listening to the terminal. What it sent but nobody took is forgotten. */
	close(): void {
		clearTimeout(this.expiry);
		this.source.off('data', this.receive);
		this.source.off('end', this.lose);
		this.source.off('error', this.lose);
		this.source.pause();
		this.queue.length = 0;
		this.destroy();
	}

	private readonly receive = (chunk: Buffer | string): void => {
		clearTimeout(this.expiry);
		const text = typeof chunk === 'string' ? chunk : this.decoder.write(chunk);
		const keys = this.parser.push(text, performance.now());
		// Behind an Esc, in one chunk with it, it is no key of the parser's: it came with Alt held down.
		if (text.includes(INTERRUPT) || keys.includes(INTERRUPT)) {
			// Whoever presses it wants nothing of what waits before it.
			this.queue.length = 0;
			this.emit('interrupt');
			return;
		}
		this.queue.push(...keys);
		if (this.parser.waiting) this.expiry = setTimeout(this.expire, this.patience);
		this.pump();
	};

	private readonly expire = (): void => {
		this.queue.push(...this.parser.expire());
		this.pump();
	};

	private readonly lose = (): void => {
		this.emit('gone');
	};

	private pump(): void {
		if (this.pumping || this.queue.length === 0) return;
		this.pumping = true;
		setImmediate(this.turn);
	}

	private readonly turn = (): void => {
		this.pumping = false;
		if (this.destroyed) return;
		if (--this.turnsToWait > 0 || this.readableLength > 0) {
			// A key that nobody has taken waits for `_read`; spinning would burn the processor.
			if (this.readableLength === 0) this.pump();
			return;
		}
		const key = this.queue.shift();
		if (key === undefined) return;
		this.turnsToWait = 1;
		if (key === SUSPEND) this.emit('suspend');
		else this.hand(key);
		this.pump();
	};

	private hand(key: string): void {
		this.push(key);
		// Decided after the key has been taken in, since the key itself may have opened a text field.
		process.nextTick(() => {
			if (key === ESCAPE || this.slow()) this.turnsToWait = SLOW_TURNS;
		});
	}
}
