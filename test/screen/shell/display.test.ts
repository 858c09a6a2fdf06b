import { afterEach, describe, expect, test } from 'vitest';
import type { Display, DisplayPort } from '../../../src/screen/shell/display.ts';
import { openScreen } from '../../../src/screen/shell/open-screen.tsx';
import type { Output } from '../../../src/session/protocol/notes.ts';
import * as asks from '../../helpers/screen/asks.ts';
import { FakeHome, FakeLive, KEPT } from '../../helpers/screen/fake-ports.ts';
import { HeadlessTerminal } from '../../helpers/screen/mount.tsx';

const running: { terminal: HeadlessTerminal; ended: Promise<unknown> }[] = [];

/** Choices kept in memory, as a home keeps them on disk. */
class FakeDisplay implements DisplayPort {
	constructor(private choices: Partial<Display> = {}) {}

	kept(): Partial<Display> {
		return this.choices;
	}

	keep(changes: Partial<Display>): void {
		this.choices = { ...this.choices, ...changes };
	}
}

function session(outputs: Output[], display = new FakeDisplay()) {
	const terminal = new HeadlessTerminal({ columns: 100, rows: 30 });
	const live = new FakeLive(outputs, [], undefined, KEPT);
	let keys = 0;
	const ended = openScreen({
		stdin: terminal.stdin,
		stdout: terminal.stdout,
		environment: { TERM: 'xterm' },
		port: new FakeHome(live),
		jobPath: 'arch.json',
		display,
		// A doubt's page has been on the screen for a second whenever a key comes.
		world: { now: () => performance.now() + 1000 * keys++, ring: () => {} },
	});
	running.push({ terminal, ended });
	return { terminal, live, display };
}

afterEach(async () => {
	for (const { terminal, ended } of running.splice(0)) {
		terminal.type('\x03');
		await ended;
	}
});

describe('lengths as one chooses', () => {
	test('go round with a key, and a number is taken in what is shown', async () => {
		const { terminal, live, display } = session([asks.CHECK]);
		await terminal.until('14 5/16 in');
		terminal.type('u');
		await terminal.until('14.31 in');
		terminal.type('u');
		await terminal.until('363.5 mm');
		terminal.type('254');
		await terminal.until('= 254 mm (10 in)');
		terminal.type('\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'reading', reading: 10 } }]);
		expect(display.kept()).toEqual({ lengths: 'mm' });
	});

	test('a number with a unit of its own stays what it is', async () => {
		const { terminal, live } = session([asks.CHECK], new FakeDisplay({ lengths: 'mm' }));
		await terminal.until('363.5 mm');
		terminal.type('14 5/16"\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'reading', reading: 14.3125 } }]);
	});

	test('a letter in a number is a unit, a letter in a note is text', async () => {
		const { terminal, live } = session([asks.CHECK]);
		await terminal.until('14 5/16 in');
		terminal.type('25.4 mm');
		await terminal.until('= 1 in');
		terminal.type('\x1b');
		await terminal.until((text) => !text.includes('= 1 in'));
		terminal.type('*1\rumch?\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: null, note: 'umch?' }]);
	});
});

describe('the large mark', () => {
	test('is from the far end from bend 2 on, from the start end by a key, and so it stays', async () => {
		const { terminal, display } = session([asks.SET]);
		await terminal.until('from the far end');
		terminal.type('m');
		await terminal.until(/^from the start end/m);
		expect(display.kept()).toEqual({ fromStart: true });
		const next = session([asks.SET], display).terminal;
		await next.until(/^from the start end/m);
		next.type('m');
		await next.until(/^from the far end/m);
	});

	test('of bend 1 is from the start end, and there is nothing to choose', async () => {
		const { terminal } = session([asks.SET_FIRST]);
		expect(await terminal.until(/^from the start end/m)).not.toContain(' m  mark');
	});
});

describe('the check list', () => {
	test('is switched off, with the page for laying out the tube, and on again', async () => {
		const { terminal, display } = session([asks.SET_FIRST]);
		await terminal.until('slack out');
		terminal.type('c');
		await terminal.until((text) => !text.includes('slack out'));
		expect(display.kept()).toEqual({ checklist: false });
		const next = session([asks.SESSION, asks.SET_FIRST], display).terminal;
		await next.until('New session');
		next.type('+');
		expect(await next.until('Set the tube')).not.toContain('slack out');
		next.type('c');
		await next.until('slack out');
	});

	test('the tube is laid out before its first bend only', async () => {
		const first = session([asks.SESSION, asks.SET_FIRST]).terminal;
		// With room for them the marks stand on the first page.
		expect(await first.until('New session')).toContain('A welded seam goes to the side');
		first.type('+');
		await first.until('Set the tube');
		const later = session([{ ...asks.SESSION, resumed: true }, asks.SET]).terminal;
		await later.until('Session goes on');
		later.type('+');
		await later.until('Set the tube');
	});
});

describe('help', () => {
	test.each<[string, Output[], string, string]>([
		['set', [asks.SET], '', 'Put the large mark'],
		['pull', [asks.PULL], '', 'Pull until the dial'],
		['released', [asks.PULL], '51.5\r', 'once the pressure is off'],
		['measure', [asks.MEASURE], '', 'how far it is bent'],
		['confirm', [asks.CONFIRM], '', 'Read the instrument again'],
		['check', [asks.CHECK], '', 'Measure the tube itself'],
		['decide', [asks.DECIDE], '', 'Take the bend as it is'],
		['corrected', [asks.CORRECTED, asks.SET], '', 'new numbers for the bends left'],
		['more', [asks.MEASURE], '*', 'on disk before the next question'],
	])('on the page %s, and back', async (_, outputs, keys, says) => {
		const { terminal, live } = session(outputs);
		await terminal.until('Aft arch');
		terminal.type(keys);
		await terminal.until(' h  help');
		if (keys !== '') await terminal.until(/^(Pull 1, after release|More)/);
		const before = terminal.text;
		terminal.type('?');
		await terminal.until(says);
		terminal.type('/');
		await terminal.until((text) => text === before);
		expect(live.answers).toEqual([]);
	});

	test('by numeric pad, and what it offers by numeric pad', async () => {
		const { terminal, display } = session([asks.SET]);
		await terminal.until('76 3/8 in');
		terminal.type('*11\r');
		await terminal.until('topics to read');
		terminal.type('1\r1\r2\r3\r');
		await terminal.until('check list on');
		expect(display.kept()).toEqual({ lengths: 'decimal', fromStart: true, checklist: false });
		terminal.type('/2\r');
		await terminal.until('Lay out the tube');
		terminal.type('+');
		await terminal.until('Set the tube');
	});
});
