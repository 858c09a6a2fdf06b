import { beforeEach, expect, test, vi } from 'vitest';
import { homeView } from '../../src/screen/home/pages/index.ts';
import { viewOf } from '../../src/screen/session/pages/index.ts';
import { frameOf } from '../../src/screen/shell/app-frame.ts';
import { frame } from '../../src/screen/shell/frame.ts';
import { lookOf } from '../../src/screen/shell/look.ts';
import { NOTHING } from '../../src/screen/shell/prompt.ts';
import { line } from '../../src/screen/text/line.ts';
import * as asks from '../helpers/screen/asks.ts';
import { ARCH, FakeHome, FakeLive, KEPT, ROWS } from '../helpers/screen/fake-ports.ts';
import type { HeadlessTerminal } from '../helpers/screen/mount.tsx';
import { runScreen } from '../helpers/screen/run-screen.ts';

vi.mock('../../src/screen/session/pages/index.ts', { spy: true });
vi.mock('../../src/screen/home/pages/index.ts', { spy: true });
vi.mock('../../src/screen/shell/app-frame.ts', { spy: true });

const counted = { viewOf: vi.mocked(viewOf), homeView: vi.mocked(homeView), frameOf: vi.mocked(frameOf) };

/** How often each was asked for since it was last asked here. */
function counts() {
	const so = Object.fromEntries(Object.entries(counted).map(([name, { mock }]) => [name, mock.calls.length]));
	vi.clearAllMocks();
	return so;
}

beforeEach(() => vi.clearAllMocks());

/** Waits until Ink draws what was painted before it came, so that nothing of the start is counted with a key. */
async function settled(terminal: HeadlessTerminal, shown: string): Promise<void> {
	await terminal.until(shown);
	await vi.waitFor(() => expect(counted.frameOf.mock.calls.length).toBeGreaterThan(1));
	vi.clearAllMocks();
}

async function counting(terminal: HeadlessTerminal, keys: string, shown: string | RegExp) {
	terminal.type(keys);
	await terminal.until(shown);
	return counts();
}

const SESSION_KEY = { viewOf: 1, homeView: 0, frameOf: 1 };

test.each([
	['a digit', '4', /^> 4/m],
	['a choice page', '*', 'write a note'],
	['help', 'h', /^Help/],
	['a way to show lengths', 'u', /u +mm/],
	['an earlier reading', '\x1b[A', /^Earlier readings/],
])('a key in a session takes one view and one frame: %s', async (_, key, shown) => {
	const live = new FakeLive([asks.SET, asks.PULL], [], ARCH, KEPT);
	const terminal = runScreen(new FakeHome(live), undefined, { jobPath: 'arch.json' });
	await settled(terminal, 'Pull 1');
	expect(await counting(terminal, key, shown)).toEqual(SESSION_KEY);
});

test('an answer that is saved takes one view and one frame', async () => {
	const live = new FakeLive([asks.MEASURE], [[asks.MEASURE]]);
	const terminal = runScreen(new FakeHome(live), undefined, { jobPath: 'arch.json' });
	await settled(terminal, 'Measure');
	expect(await counting(terminal, '7', /^> 7/m)).toEqual(SESSION_KEY);
	expect(await counting(terminal, '\r', 'Saved as line')).toEqual(SESSION_KEY);
});

test('a letter of a note takes one view and one frame', async () => {
	const live = new FakeLive([asks.MEASURE], [[asks.MEASURE]]);
	const terminal = runScreen(new FakeHome(live), undefined, { jobPath: 'arch.json' });
	await settled(terminal, 'Measure');
	await counting(terminal, '*', 'write a note');
	await counting(terminal, '1', /^> 1/m);
	await counting(terminal, '\r', 'Note');
	expect(await counting(terminal, 't', /^> t/m)).toEqual(SESSION_KEY);
});

test('a letter on the home page takes one view and one frame, and another window size only a frame', async () => {
	const terminal = runScreen(new FakeHome(null, ROWS));
	await settled(terminal, 'Jobs');
	expect(await counting(terminal, 's', 'Search: s')).toEqual({ viewOf: 0, homeView: 1, frameOf: 1 });
	terminal.resize({ columns: 100, rows: 30 });
	await terminal.until('─'.repeat(100));
	expect(counts()).toEqual({ viewOf: 0, homeView: 0, frameOf: 1 });
});

test.each([
	{ columns: 80, rows: 24, words: 5, wanted: 1, where: 'under its words' },
	{ columns: 160, rows: 50, words: 5, wanted: 1, where: 'under its words' },
	{ columns: 160, rows: 50, words: 30, wanted: 2, where: 'beside its words' },
])('a frame of $columns columns with the picture $where words each width once', ({ columns, rows, words, wanted }) => {
	const body = vi.fn(() => [{ rank: 0, lines: Array.from({ length: words }, () => line('word')) }]);
	const picture = vi.fn(() => [line('picture')]);
	const prompt = { label: '', empty: '' };
	const content = { title: 'Page', where: [], body, prompt, entry: NOTHING, message: null, picture };
	frame(content, { columns, rows }, lookOf({}, false, false));
	expect([body, picture].map(({ mock }) => mock.calls.length)).toEqual([wanted, 1]);
});
