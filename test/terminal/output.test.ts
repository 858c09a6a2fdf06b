import { EventEmitter } from 'node:events';
import { setImmediate as turn } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ScreenOutput, type Sink, sizeOf } from '../../src/terminal/output.ts';
import { repaint } from '../../src/terminal/painter.ts';
import { ShownScreen } from '../helpers/screen/shown-screen.ts';

const SIZE = { columns: 20, rows: 6 };

/** A sink of that size which keeps what is written to it. */
function sinkOf(size: { columns: number; rows: number }) {
	const written: string[] = [];
	const sink = Object.assign(new EventEmitter(), {
		isTTY: true,
		...size,
		write: (text: string) => written.push(text) > 0,
	});
	return { written, sink: sink as unknown as Sink & EventEmitter };
}

async function fed(screen: ShownScreen, bytes: string) {
	await new Promise<void>((resolve) => screen.feed(bytes, resolve));
}

describe('repainting', () => {
	test('writes only the rows that changed, each at its place', () => {
		expect(repaint(['a', 'b', 'c'], ['a', 'B', 'c'])).toBe('\x1b[?2026h\x1b[2;1H\x1b[KB\x1b[?2026l');
	});

	test('writes nothing when nothing changed', () => {
		expect(repaint(['a', ''], ['a'])).toBe('');
	});

	test('any frames one after the other show the last one, and nothing scrolls', async () => {
		const row = fc.string({ unit: 'grapheme-ascii', maxLength: SIZE.columns });
		const frame = fc.array(row, { maxLength: SIZE.rows - 1 });
		await fc.assert(
			fc.asyncProperty(fc.array(frame, { minLength: 1, maxLength: 4 }), async (frames) => {
				const screen = new ShownScreen(SIZE);
				let before: string[] | null = null;
				for (const after of frames) {
					await fed(screen, repaint(before, after));
					before = after;
				}
				const lines = screen.lines.map((line) => line.trimEnd());
				const wanted = frames.at(-1)!.map((line) => line.trimEnd());
				expect(lines).toEqual([...wanted, ...Array(SIZE.rows - wanted.length).fill('')]);
				expect(screen.scrolledOut).toBe(0);
			}),
			{ numRuns: 60 },
		);
	});
});

describe('the screen output', () => {
	test('draws the last of several frames in one turn, once', async () => {
		const { sink, written } = sinkOf(SIZE);
		const output = new ScreenOutput(sink);
		output.write('one');
		output.write('two');
		await turn();
		await turn();
		expect(written).toEqual([repaint(null, ['two'])]);
	});

	test('leaves the cursor commands of Ink out, and calls back', async () => {
		const { sink, written } = sinkOf(SIZE);
		const output = new ScreenOutput(sink);
		await new Promise<void>((resolve) => output.write('\x1b[?25h', resolve));
		await turn();
		expect(written).toEqual([]);
	});

	test('draws the next frame whole after a resize', async () => {
		const { sink, written } = sinkOf(SIZE);
		const output = new ScreenOutput(sink);
		output.write('one\ntwo');
		await turn();
		sink.emit('resize');
		output.write('one\ntwo');
		await turn();
		await turn();
		expect(written).toEqual([repaint(null, ['one', 'two']), repaint(null, ['one', 'two'])]);
	});

	test('never writes into the last row', async () => {
		const { sink, written } = sinkOf({ columns: 20, rows: 3 });
		const output = new ScreenOutput(sink);
		output.write('one\ntwo\nthree\nfour');
		await turn();
		await turn();
		expect(written).toEqual([repaint(null, ['one', 'two'])]);
	});

	test('gives a plain terminal its frames one below the other, without escape sequences', async () => {
		const { sink, written } = sinkOf(SIZE);
		const output = new ScreenOutput(sink, true);
		output.write('one\ntwo');
		await turn();
		await turn();
		expect(written).toEqual(['one\ntwo\n']);
	});

	test('takes a terminal of 0 by 0 for one of 80 by 24', () => {
		expect(sizeOf({ columns: 0, rows: 0 })).toEqual({ columns: 80, rows: 24 });
		expect(sizeOf({ columns: 60, rows: 20 })).toEqual({ columns: 60, rows: 20 });
	});
});
