import { EventEmitter } from 'node:events';

export interface Size {
	columns: number;
	rows: number;
}

/** What a screen needs of the terminal's output. */
export type Sink = Pick<NodeJS.WriteStream, 'write' | 'on' | 'off'> & {
	columns?: number;
	rows?: number;
	isTTY?: boolean;
	writableLength?: number;
};

/** The terminal's size in cells. A pseudo-terminal that was never told its size says 0 by 0: then 80 by 24. */
export function sizeOf(sink: Pick<Sink, 'columns' | 'rows'>): Size {
	return { columns: sink.columns || 80, rows: sink.rows || 24 };
}

/** The terminal's output as Ink is given it: never 0 by 0, which Ink would draw one cell wide and wipe at every frame. */
export class ScreenOutput extends EventEmitter {
	private readonly resized = () => this.emit('resize');

	constructor(private readonly sink: Sink) {
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

	get writableLength(): number {
		return this.sink.writableLength ?? 0;
	}

	write(text: string, done?: (error?: Error | null) => void): boolean {
		return this.sink.write(text, done);
	}

	close(): void {
		this.sink.off('resize', this.resized);
	}
}
