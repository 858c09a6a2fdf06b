import { EventEmitter } from 'node:events';
import { repaint } from './painter.ts';

export interface Size {
	columns: number;
	rows: number;
}

/** What a screen needs of the terminal's output. */
export type Sink = Pick<NodeJS.WriteStream, 'write' | 'on' | 'off'> & {
	columns?: number;
	rows?: number;
	isTTY?: boolean;
};

/** The terminal's size in cells. A pseudo-terminal that was never told its size says 0 by 0: then 80 by 24. */
export function sizeOf(sink: Pick<Sink, 'columns' | 'rows'>): Size {
	return { columns: sink.columns || 80, rows: sink.rows || 24 };
}

/** What Ink writes besides frames: the cursor, which the screen mode sees to. */
const NO_FRAME = ['', '\x1b[?25h', '\x1b[?25l'];

/**
 * The terminal's output as Ink is given it. Ink (with `debug`) writes whole frames; here they are brought onto the screen line by
 * line, only where they changed, at places counted from the top left. Ink's own line by line drawing moves relative to the
 * cursor, and in 6.8.0 one line too few: every frame would scroll the screen by one.
 */
export class ScreenOutput extends EventEmitter {
	private painted: readonly string[] | null = null;
	private frame: string | null = null;
	private flushing: NodeJS.Immediate | undefined;

	constructor(
		private readonly sink: Sink,
		/** A terminal that knows no escape sequences gets the frames one below the other. */
		private readonly plain = false,
		/** For a screen reader: of each frame the lines that are new in it, one below the other. */
		private readonly spoken = false,
	) {
		super();
		sink.on('resize', this.resized);
	}

	get columns(): number {
		return sizeOf(this.sink).columns;
	}

	get rows(): number {
		return sizeOf(this.sink).rows;
	}

	get isTTY(): boolean {
		return this.sink.isTTY === true;
	}

	/** Takes a frame; of several in one turn of the event loop only the last is drawn. */
	write(text: string, done?: () => void): boolean {
		if (!NO_FRAME.includes(text)) {
			this.frame = text;
			this.flushing ??= setImmediate(this.flush);
		}
		if (done !== undefined) setImmediate(done);
		return true;
	}

	/** Draws lines at once, without Ink. */
	paint(lines: readonly string[]): void {
		const before = this.painted;
		this.painted = lines.slice(0, this.rows - 1);
		const bytes = repaint(before, this.painted);
		if (bytes !== '') this.sink.write(bytes);
	}

	/** The screen no longer shows what was drawn on it: the next frame is drawn whole. */
	forget(): void {
		this.painted = null;
	}

	close(): void {
		clearImmediate(this.flushing);
		this.sink.off('resize', this.resized);
	}

	private readonly resized = (): void => {
		this.forget();
		this.emit('resize');
	};

	private readonly flush = (): void => {
		this.flushing = undefined;
		const { frame } = this;
		this.frame = null;
		if (frame === null) return;
		// Never the last row: writing its last cell scrolls some consoles.
		const lines = frame.split('\n').slice(0, this.rows - 1);
		const bytes = this.spoken
			? newLines(this.painted ?? [], lines)
			: this.plain
				? `${frame}\n`
				: repaint(this.painted, lines);
		this.painted = lines;
		if (bytes !== '') this.sink.write(bytes);
	};
}

/** Rules, block digits and drawings are for the eye. */
const PICTURE = /[\u2500-\u259f\u2800-\u28ff]/;

/** The lines with words in them that were not there before. */
function newLines(before: readonly string[], after: readonly string[]): string {
	const known = new Set(before.map((line) => line.trim()));
	const fresh = after
		.map((line) => line.trim())
		.filter((line) => line !== '' && !known.has(line) && !PICTURE.test(line));
	return fresh.map((line) => `${line}\n`).join('');
}
