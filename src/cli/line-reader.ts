import type { Readable } from 'node:stream';

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/** The lines of a stream, in pieces as they come: memory holds one line and one piece of the stream, however long a line is. */
export class LineReader {
	private readonly parts: Buffer[] = [];
	private kept = 0;
	private isFirst = true;

	/** `most`: the longest line that is kept, in bytes; of a longer one its first part is, and one byte more. */
	constructor(private readonly most: number) {}

	/** The lines that end in `chunk`. */
	push(chunk: Buffer): string[] {
		const lines: string[] = [];
		let from = 0;
		let [feed, carriage] = [chunk.indexOf(LINE_FEED), chunk.indexOf(CARRIAGE_RETURN)];
		while (feed >= 0 || carriage >= 0) {
			const at = feed < 0 || (carriage >= 0 && carriage < feed) ? carriage : feed;
			this.keep(chunk.subarray(from, at));
			lines.push(this.end());
			from = at + 1;
			if (at === feed) feed = chunk.indexOf(LINE_FEED, from);
			else carriage = chunk.indexOf(CARRIAGE_RETURN, from);
		}
		this.keep(chunk.subarray(from));
		return lines;
	}

	/** What no line's end followed. */
	end(): string {
		const line = Buffer.concat(this.parts).toString('utf8');
		// Some systems put a byte order mark in front of all that they write.
		const said = this.isFirst ? line.replace(/^\uFEFF/, '') : line;
		this.parts.length = 0;
		this.kept = 0;
		this.isFirst = false;
		return said;
	}

	private keep(part: Buffer): void {
		const room = Math.max(0, this.most + 1 - this.kept);
		if (part.length === 0 || room === 0) return;
		// A copy, so that no large piece of the stream is held for a few bytes of it.
		this.parts.push(Buffer.from(part.subarray(0, room)));
		this.kept += Math.min(room, part.length);
	}
}

/** The lines of a stream one by one, the next piece of it asked for only when they have been taken; none any more once `gone`. */
export async function* linesIn(input: Readable, most: number, gone: AbortSignal): AsyncGenerator<string> {
	const reader = new LineReader(most);
	const pieces = input[Symbol.asyncIterator]();
	for (;;) {
		const piece = await unless(gone, pieces.next());
		if (piece === undefined) return;
		if (piece.done) break;
		yield* reader.push(Buffer.from(piece.value));
	}
	yield reader.end();
}

/** What a promise gives; undefined as soon as `gone`. One that is never gone must not hold on to what came: a race with a lasting promise would. */
export async function unless<T>(gone: AbortSignal, coming: Promise<T>): Promise<T | undefined> {
	if (gone.aborted) return undefined;
	let leave = () => {};
	const left = new Promise<undefined>((resolve) => {
		leave = () => resolve(undefined);
		gone.addEventListener('abort', leave, { once: true });
	});
	try {
		return await Promise.race([coming, left]);
	} finally {
		gone.removeEventListener('abort', leave);
	}
}
