import { describe, expect, test } from 'vitest';
import { openedOnScreen } from '../../src/screen/session/opened-on-screen.ts';
import { finishedTube } from '../../src/screen/session/pages/finished-tube.ts';
import { fitted, type Section } from '../../src/screen/session/pages/page.ts';
import { USUAL_DISPLAY } from '../../src/screen/shell/display.ts';
import { line } from '../../src/screen/text/line.ts';
import type { PullAsk } from '../../src/session/protocol/asks.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import { pullReasonTexts, reasonTexts } from '../../src/words/reason.ts';
import * as asks from '../helpers/screen/asks.ts';
import { PIECE } from '../helpers/screen/batch.ts';
import { ARCH, FakeHome, FakeLive, ROWS, refusal } from '../helpers/screen/fake-ports.ts';
import type { HeadlessTerminal } from '../helpers/screen/mount.tsx';
import { frameText } from '../helpers/screen/page-frame.ts';
import { runScreen } from '../helpers/screen/run-screen.ts';

/** What an operator must be able to read whole, however little room there is. */

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 60, rows: 20 },
];

const session = (outputs: Output[]) => new FakeHome(new FakeLive(outputs));

/** The screen's words, whatever lines they are broken into. */
const words = (terminal: HeadlessTerminal) => terminal.text.replace(/\s+/g, ' ');

/** As the first pull of a tube has it once another one has been bent. */
const FIRST_PULL: PullAsk = {
	...{ ...asks.PULL, bend: 1, target: 17, design: 17, stop: 20.5, lead: 18, risk: 0.016 },
	reason: [
		{
			...{ code: 'springback-expected', by: 4.1, to: 16.4, sd: 0.4 },
			known: { tubes: 1, near: [{ shares: 'bender', tubes: 2 }], pulls: 0 },
		},
		{ code: 'chance-over', limit: 17.5, chance: 0.016 },
	],
};

describe.each(SIZES)('at $columns by $rows', (size) => {
	test.each([true, false])('the reason of a first pull stands whole, ASCII only: %s', async (ascii) => {
		const terminal = runScreen(session([asks.SET_FIRST, FIRST_PULL]), size, { jobPath: 'a', ascii });
		await terminal.until('Pull to 20.5');
		for (const why of pullReasonTexts(FIRST_PULL.reason, ARCH)) {
			expect(why).not.toBe('');
			expect(words(terminal)).toContain(ascii ? why.replaceAll('°', ' deg') : why);
		}
		expect(words(terminal)).toMatch(/! Hands clear of .* out of the swing/);
	});

	test('the caution of the first pull stays when the check list is switched off', async () => {
		const terminal = runScreen(session([asks.SET_FIRST, FIRST_PULL]), size, { jobPath: 'a' });
		await terminal.until('Pull to 20.5');
		terminal.type('h1\r3\r');
		await terminal.until('check list on');
		terminal.type('///');
		await terminal.until('Pull to 20.5');
		expect(words(terminal)).toMatch(/! Hands clear of .* out of the swing/);
	});

	test('a message with a long path is broken, not cut', async () => {
		const path = '/home/yard/.local/share/pullbook/sessions/20311125-222934-2af85af7.log.lock';
		const home = new FakeHome(null, ROWS);
		home.fault = refusal(`Another process writes it. If it is not running any more, remove ${path} and try again.`, 4);
		const terminal = runScreen(home, size);
		await terminal.until('Interrupted');
		terminal.type('+');
		await terminal.until('Another process writes it');
		expect(terminal.text.replace(/\s+/g, '')).toContain(`remove${path}andtryagain.`);
	});
});

describe('the reason of an advice', () => {
	const size = { columns: 60, rows: 20 };
	const texts = reasonTexts(
		asks.HOPELESS.reason.filter(({ code }) => code !== 'bend-made'),
		ARCH,
	);
	const shown = async (keys: string) =>
		(await frameText(session([asks.HOPELESS]), size, { jobPath: 'a', keys })).replace(/\s+/g, ' ');

	test('ends with a whole sentence where there is no room for more, and says that there is more', async () => {
		const page = await shown('');
		const fit = texts.filter((text) => page.includes(text));
		expect(fit.length).toBeGreaterThan(0);
		expect(fit).toEqual(texts.slice(0, fit.length));
		for (const missing of texts.slice(fit.length)) expect(page).not.toContain(missing.slice(0, 12));
		expect(page).toContain('more: larger window');
	});

	test('stands whole behind `*`', async () => {
		const [, number] = /(\d+) read all of the reason/.exec(await shown('*'))!;
		expect(await shown(`*${number}\r`)).toContain(texts.join(' '));
	});
});

describe.each([...SIZES, { columns: 100, rows: 30 }, { columns: 160, rows: 50 }])('at $columns by $rows', (size) => {
	/** Each turn of the bends left changes, which takes a line of its own in a narrow window. */
	const allTurned = {
		...asks.CORRECTED_FIRST,
		remaining: asks.CORRECTED_FIRST.remaining.map((bend) => ({ ...bend, rotation: bend.rotation - 0.8 })),
	};

	test.each<[string, Output[], string]>([
		['corrected, two bends left', [asks.CORRECTED, asks.SET], ''],
		['corrected, every check foretold', [asks.CORRECTED_FIRST, asks.SET], ''],
		['corrected, every bend turned otherwise', [allTurned, asks.SET], ''],
		['done', [asks.DONE], ''],
		['done, more to be told', [{ ...asks.MAY_FIT, checks: [...asks.DONE.checks, ...asks.DONE.checks] }], ''],
		['done, of a batch', [PIECE, asks.DONE], '+'],
	])('the corner that wandered most and how likely the tube fits are told on the page %s', async (_, outputs, keys) => {
		const shown = await frameText(session(outputs), size, { jobPath: 'a', keys });
		expect(shown).toMatch(/^(Corrected|Done)/);
		expect(shown).toMatch(/Corner [13] is \d\/\d+ in off, the farthest/);
		expect(shown).toMatch(/about \d in 10/);
	});

	test('the turns that change are told in a line where else none is left for the tube', async () => {
		const live = new FakeLive([allTurned, asks.SET]);
		// Four lines in the narrow window.
		live.messages.push(`${'The log ended in a line that was cut off. '.repeat(4)}Kept.`);
		const shown = await frameText(new FakeHome(live), size, { jobPath: 'a' });
		expect(shown).toMatch(/corner 1[ ,].* off/i);
		expect(shown).toMatch(/about\s\d\sin\s10/);
		if (size.columns < 80) {
			expect(shown).toContain('rotation now (before): bend 2 -0.8° (0°), bend 3 178.4°');
			expect(shown).not.toContain('rotation: drawing');
		}
	});
});

describe('a corrected tube, in as many rows as are left', () => {
	const state = openedOnScreen(new FakeLive([asks.CORRECTED_FIRST, asks.SET]), USUAL_DISPLAY);
	const rows = Array.from({ length: 16 }, (_, at) => at + 1);

	test.each(rows.flatMap((room) => [60, 80].map((columns) => [room, columns] as const)))(
		'%d of %d columns: has its farthest corner and its chance to fit, and says what is missing',
		(room, columns) => {
			const { lines, short } = fitted(finishedTube(state, asks.CORRECTED_FIRST, columns, room), room);
			const text = lines.map((parts) => parts.map((part) => part.text).join('')).join('\n');
			expect(lines.length).toBeLessThanOrEqual(room);
			expect(text).toMatch(/corner 1[ ,].* off/i);
			expect(text).toMatch(/(Fits|Chance to fit): about\s8\sin\s10/);
			const told = ['rise', 'legs', 'reach', 'lie'].filter((name) => new RegExp(`^${name} `, 'm').test(text));
			expect(short).toBe(told.length < 4 || !/ar end/.test(text));
		},
	);
});

describe('what has no room', () => {
	const section = (rank: number, text: string, extra = false): Section => ({ rank, lines: [line(text)], extra });

	test('is said to be missing unless it stands elsewhere too', () => {
		const reason = section(0, 'reason');
		expect(fitted([reason, section(1, 'check')], 2).short).toBe(false);
		expect(fitted([reason, section(1, 'check')], 1)).toEqual({ lines: reason.lines, short: true });
		expect(fitted([reason, section(1, 'drawing', true)], 1).short).toBe(false);
		expect(fitted([reason, section(0, 'caution')], 1).short).toBe(true);
	});

	test('is told beside the title', async () => {
		const terminal = runScreen(session([asks.SET]), SIZES[1]!, { jobPath: 'a' });
		expect(await terminal.until('Set the tube')).toContain('Set the tube  more: larger window');
	});
});
