import { EventEmitter, once } from 'node:events';
import { setImmediate as turn } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { type KeySource, KeyStream } from '../../src/terminal/key-stream.ts';

class Keyboard extends EventEmitter {
	isTTY = true;
	paused = false;
	rawModes: boolean[] = [];
	setRawMode(on: boolean) {
		this.rawModes.push(on);
	}
	pause() {
		this.paused = true;
		return this;
	}
	resume() {
		return this;
	}
	ref() {}
	unref() {}
	type(text: string | Buffer) {
		this.emit('data', Buffer.from(text as string));
	}
}

/** A key stream whose keys are collected as Ink takes them: every one that is there, whenever some are. */
function listening(options: ConstructorParameters<typeof KeyStream>[1] = {}) {
	const keyboard = new Keyboard();
	const stream = new KeyStream(keyboard as unknown as KeySource, options);
	const taken: string[][] = [];
	stream.on('readable', () => {
		const keys: string[] = [];
		for (let key = stream.read(); key !== null; key = stream.read()) keys.push(key);
		if (keys.length > 0) taken.push(keys);
	});
	return { keyboard, stream, taken };
}

/** Lets as many turns of the event loop pass as the keys can need. */
async function turns(count: number) {
	for (let each = 0; each < count; each++) await turn();
}

describe('a key stream', () => {
	test('hands on one key a turn, whatever comes in one chunk', async () => {
		const { keyboard, taken } = listening();
		keyboard.type('12.5\r');
		await turns(12);
		expect(taken).toEqual([['1'], ['2'], ['.'], ['5'], ['\r']]);
	});

	test('keeps keys that nobody takes yet, each by itself, even when an encoding is set', async () => {
		const keyboard = new Keyboard();
		const stream = new KeyStream(keyboard as unknown as KeySource);
		keyboard.type('12');
		await turns(5);
		stream.setEncoding();
		const keys: string[] = [];
		stream.on('readable', () => {
			for (let key = stream.read(); key !== null; key = stream.read()) keys.push(key);
		});
		await turns(8);
		expect(keys).toEqual(['1', '2']);
	});

	test('leaves four turns between keys while a text field has the focus, also after the key that opened it', async () => {
		let slow = false;
		const { keyboard, stream } = listening({ slow: () => slow });
		const at: number[] = [];
		let now = 0;
		stream.on('readable', () => {
			at.push(now);
			slow = true;
		});
		keyboard.type('abc');
		for (; now < 16; now++) await turn();
		const gaps = at.slice(1).map((time, index) => time - at[index]!);
		expect(gaps.length).toBe(2);
		for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(4);
	});

	test('joins a character whose bytes come in two chunks', async () => {
		const { keyboard, taken } = listening();
		const bytes = Buffer.from('½');
		keyboard.type(bytes.subarray(0, 1));
		keyboard.type(bytes.subarray(1));
		await turns(5);
		expect(taken).toEqual([['½']]);
	});

	test('gives Esc by itself once nothing has followed it', async () => {
		const { keyboard, stream, taken } = listening({ patience: 1 });
		keyboard.type('\x1b');
		await once(stream, 'readable');
		expect(taken).toEqual([['\x1b']]);
	});

	test('tells Ctrl-Z in its place among the keys, and Ctrl-C before all that wait, which are forgotten', async () => {
		const { keyboard, stream, taken } = listening();
		const heard: string[] = [];
		stream.on('interrupt', () => heard.push(`interrupt after ${taken.length}`));
		stream.on('suspend', () => heard.push(`suspend after ${taken.length}`));
		keyboard.type('12\x1a3');
		await turns(12);
		keyboard.type('45');
		keyboard.type('6\x037');
		expect(heard).toEqual(['suspend after 2', 'interrupt after 3']);
		await turns(12);
		expect(taken.flat()).toEqual(['1', '2', '3']);
	});

	test.each(['\x1b\x03', 'h\x1b\x03', '\x1b]\x03', '\x1b[\x03'])('hears Ctrl-C in the chunk %j too', (chunk) => {
		const { keyboard, stream } = listening();
		let heard = 0;
		stream.on('interrupt', () => heard++);
		keyboard.type(chunk);
		expect(heard).toBe(1);
	});

	test('tells when the terminal has hung up', async () => {
		const { keyboard, stream } = listening();
		const gone = once(stream, 'gone');
		keyboard.emit('error', Object.assign(new Error('read EIO'), { code: 'EIO' }));
		await gone;
		expect(keyboard.listenerCount('data')).toBe(1);
	});

	test('passes raw mode on, and once closed neither listens nor hands on what was left', async () => {
		const { keyboard, stream, taken } = listening();
		stream.setRawMode(true);
		stream.setRawMode(false);
		keyboard.type('12');
		stream.close();
		await turns(5);
		expect(keyboard.rawModes).toEqual([true, false]);
		expect(taken).toEqual([]);
		expect(keyboard.listenerCount('data')).toBe(0);
		expect(keyboard.paused).toBe(true);
	});
});
