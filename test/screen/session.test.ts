import { afterEach, describe, expect, test } from 'vitest';
import { openScreen, type ScreenOptions } from '../../src/screen/shell/open-screen.tsx';
import type { Answer } from '../../src/session/protocol/action.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import * as asks from '../helpers/screen/asks.ts';
import { answeredBy, FakeHome, FakeLive, KEPT, ROWS, refusal } from '../helpers/screen/fake-ports.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';
import { HeadlessTerminal } from '../helpers/screen/mount.tsx';
import { frameText } from '../helpers/screen/page-frame.ts';

const SIZE = { columns: 80, rows: 24 };
const CTRL_C = '\x03';
const running: { terminal: HeadlessTerminal; ended: Promise<unknown> }[] = [];

let looks = 0;

function start(options: ScreenOptions, size = SIZE) {
	const terminal = new HeadlessTerminal(size);
	const ended = openScreen({
		stdin: terminal.stdin,
		stdout: terminal.stdout,
		environment: { TERM: 'xterm' },
		// Hands that read each page before they type.
		world: { now: () => performance.now() + 1000 * looks++ },
		...options,
	});
	running.push({ terminal, ended: ended.catch(() => undefined) });
	return { terminal, ended };
}

/** A session that has put out these things, answering with those. */
function session(opening: Output[], replies: Output[][] = []) {
	const live = new FakeLive(opening, replies, undefined, KEPT);
	return { live, ...start({ port: new FakeHome(live), jobPath: 'arch.json' }) };
}

afterEach(async () => {
	for (const { terminal, ended } of running.splice(0)) {
		terminal.type(CTRL_C);
		await ended;
	}
});

describe('what the keys of a page answer', () => {
	const act = (action: Answer['action']): Answer => ({ action });
	test.each<[string, Output[], string, Answer]>([
		['set, ready', [asks.SET], '+', act({ do: 'ready' })],
		['set, with the dial', [asks.SET], '.5\r', act({ do: 'ready', pointer: 0.5 })],
		[
			'set, with mark, rotation and dial',
			[asks.SET],
			'*7\r39-9/16\r*8\r179.5\r0\r',
			act({ do: 'ready', mark: 39.5625, rotation: 179.5, pointer: 0 }),
		],
		[
			'first set, with the length of the piece',
			[{ ...asks.SET, bend: 1 }],
			'*8\r95 7/8\r+',
			act({ do: 'ready', length: 95.875 }),
		],
		['set, old numbers', [asks.CORRECTED, asks.SET], '+*7\r', act({ do: 'plan', plan: 'old' })],
		['set, new numbers', [asks.CORRECTED, { ...asks.SET, plan: 'old' }], '+*7\r', act({ do: 'plan', plan: 'new' })],
		['pull, dial held and released', [asks.PULL], '51.5\r47.5\r', act({ do: 'loaded', loaded: 51.5, released: 47.5 })],
		['pull, release not read', [asks.PULL], '51.5\r+', act({ do: 'loaded', loaded: 51.5 })],
		['pull, dial far from the stop', [asks.PULL], '15.5\r', act({ do: 'loaded', loaded: 15.5 })],
		['pull, dial one degree past the stop', [asks.PULL], '52.5\r+', act({ do: 'loaded', loaded: 52.5 })],
		['pull, out of the die', [asks.PULL], '*7\r', act({ do: 'reseat' })],
		['measure', [asks.MEASURE], '47.9\r', act({ do: 'angles', angles: [47.9] })],
		['measure, skip', [asks.MEASURE], '*7\r', act({ do: 'skip' })],
		['confirm, it stands', [asks.CONFIRM], '+', act({ do: 'keep' })],
		['confirm, another reading', [asks.CONFIRM], '48.1\r', act({ do: 'reading', reading: 48.1 })],
		[
			'confirm of a mark is a length',
			[{ ...asks.CONFIRM, of: 'mark' }],
			'3\' 3 9/16"\r',
			act({ do: 'reading', reading: 39.5625 }),
		],
		[
			'confirm of a check is of its kind',
			[{ ...asks.CONFIRM, of: 'check', name: 'legs' }],
			'89 1/2\r',
			act({ do: 'reading', reading: 89.5 }),
		],
		['check in other units', [asks.CHECK], '254 mm\r', act({ do: 'reading', reading: 10 })],
		['check below the plane', [asks.CHECK_OUT], '-1/8\r', act({ do: 'reading', reading: -0.125 })],
		['check, skip', [asks.CHECK], '*7\r', act({ do: 'skip' })],
		['ovality, greatest and least', [asks.CHECK_OVALITY], '1.8\r1.71\r', act({ do: 'reading', reading: 0.95 })],
		['decide, as advised', [asks.DECIDE], '+', act({ do: 'pull' })],
		['decide, accept all the same', [asks.DECIDE], '1\r', act({ do: 'accept' })],
		['decide, open after the caution', [asks.RELIEVE], '++', act({ do: 'relieve' })],
		['decide, go back', [asks.REOPEN], '5\r', act({ do: 'reopen', bend: 1, how: 'pull' })],
		['decide, go back and open', [asks.REOPEN], '6\r+', act({ do: 'reopen', bend: 1, how: 'relieve' })],
		['decide, scrap', [asks.DECIDE], '4\rkinked\r+', act({ do: 'scrap', why: 'kinked' })],
		['take back', [asks.MEASURE], '/+', act({ do: 'undo' })],
		['note', [asks.MEASURE], '*1\rnew mandrel oil\r', { action: null, note: 'new mandrel oil' }],
		['scrap from the menu', [asks.MEASURE], '*11\rwrong tube\r+', act({ do: 'scrap', why: 'wrong tube' })],
		[
			'correct one of two readings',
			[asks.MEASURE],
			'*5\r1\r2\r46.5\r+',
			act({ do: 'amend', entry: 2, reading: 46.5, of: 'released' }),
		],
		[
			'something else measured',
			[asks.MEASURE],
			'*3\r2\r3\r20 15/16\r',
			act({ do: 'evidence', kind: 'leg', bend: 3, reading: 20.9375 }),
		],
		['go back to a bend', [asks.MEASURE], '*6\r1\r1\r', act({ do: 'reopen', bend: 1, how: 'pull' })],
		['go back to a bend and open it', [asks.MEASURE], '*6\r1\r2\r+', act({ do: 'reopen', bend: 1, how: 'relieve' })],
		['corrected, keep the old', [asks.CORRECTED, asks.SET], '2\r', act({ do: 'plan', plan: 'old' })],
		[
			'start with warnings, corrected, ready',
			[asks.SESSION, asks.WARNINGS, asks.CORRECTED, asks.SET],
			'+++',
			act({ do: 'ready' }),
		],
	])('%s', async (_, outputs, keys, answer) => {
		const { live, terminal } = session(outputs);
		await terminal.until('Aft arch');
		terminal.type(keys);
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([answer]);
	});

	test.each([
		['on a simulated bender', () => 'Simulated: the dial shows 0.', '4   leave: practice cannot be resumed'],
		['at a bender', undefined, '4   leave, to go on another time'],
	])('leaving says what can come after it, %s', async (_, sight, said) => {
		const live = Object.assign(new FakeLive([asks.SET]), sight && { sight });
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'arch.json' });
		await terminal.until('Set the tube');
		terminal.type('*');
		expect(await terminal.until('  leave')).toContain(said);
	});

	test('Enter alone, or CR LF behind a reading, answers nothing', async () => {
		const { live, terminal } = session([asks.SET, asks.PULL], [[asks.MEASURE], [asks.DECIDE]]);
		await terminal.until('Pull 1');
		terminal.type('51.5\r\n');
		await terminal.until('after release');
		terminal.type('\r');
		await terminal.until('Write what the dial reads after release');
		expect(live.answers).toEqual([]);
	});

	test.each<[string, Output[], string, string]>([
		['entry to be corrected', [asks.MEASURE], '*5\r', 'Correct an earlier'],
		['reading of it', [asks.MEASURE], '*5\r1\r', 'Correct line 2'],
		['right number', [asks.MEASURE], '*5\r1\r2\r', 'What it really was'],
		['something else', [asks.MEASURE], '*3\r', 'Something else'],
		['bend of it', [asks.MEASURE], '*3\r1\r', 'At which bend'],
		['value of it', [asks.MEASURE], '*3\r1\r3\r', 'Bend 3, measured'],
		['bend to go back to', [asks.MEASURE], '*6\r', 'Go back to a made bend'],
		['what to do with it', [asks.MEASURE], '*6\r1\r', 'Go back to bend 1'],
		['mark', [asks.SET], '*7\r', 'Not as asked'],
		['note', [asks.MEASURE], '*1\r', 'Note'],
		['reason for scrap', [asks.MEASURE], '*11\r', 'Why is it scrap?'],
		['scrap, once more', [asks.MEASURE], '*11\rkinked\r', 'Scrap the tube?'],
		['dial after release', [asks.PULL], '51.5\r', 'after release'],
		['least diameter', [asks.CHECK_OVALITY], '1.8\r', 'Least diameter'],
		['caution', [asks.RELIEVE], '+', 'Caution'],
		['taking back', [asks.MEASURE], '/', 'Take back'],
		['more', [asks.MEASURE], '*', 'More'],
	])('a numeric pad goes back from the page: %s', async (_, outputs, keys, title) => {
		const { live, terminal } = session(outputs);
		await terminal.until('Aft arch');
		const before = terminal.text;
		terminal.type(keys);
		expect(await terminal.until(title)).toContain(' / Esc  back');
		terminal.type('/');
		await terminal.until((text) => text === before);
		expect(live.answers).toEqual([]);
	});

	test('the menu keeps the numbers of what every page has, scrap last, and offers nothing that is not there', async () => {
		const menus: string[][] = [];
		const first = { ...asks.SET, bend: 1 };
		for (const [outputs, history] of [
			[[first], []],
			[[asks.SET], KEPT],
			[[asks.MEASURE], KEPT],
			[[asks.DECIDE], KEPT],
		] as const) {
			const live = new FakeLive(outputs, [], undefined, history);
			const { terminal } = start({ port: new FakeHome(live), jobPath: 'arch.json' });
			await terminal.until('Aft arch');
			terminal.type('*');
			const menu = await terminal.until('leave, to go on');
			menus.push([...menu.matchAll(/^ +\d+ {3}(.*)$/gm)].map(([, label]) => label!));
		}
		for (const menu of menus) {
			expect(menu.slice(0, 4)).toEqual(menus[0]!.slice(0, 4));
			expect(menu.at(-1)).toBe('scrap the tube');
		}
		expect(menus[0]!.join()).not.toMatch(/correct|go back/);
		expect(menus[1]!.slice(4, 6)).toEqual(['correct an earlier reading', 'go back to a made bend']);
		expect(menus[1]!.join()).not.toContain('before the correction');
	});

	test('a number is no reason for scrap, and a reason is asked once more', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type('*11\r47.9\r');
		await terminal.until('not a number');
		terminal.type('/');
		await terminal.until('Measure the bend');
		terminal.type('*11\r47.9\r');
		await terminal.until('not a number');
		terminal.type('kinked\r');
		await terminal.until('Why: kinked');
		terminal.type('/');
		await terminal.until('Measure the bend');
		expect(live.answers).toEqual([]);
	});

	test('a stroke within a note is text', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type('*1\rleft/right\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: null, note: 'left/right' }]);
	});

	test('after a refused number the next key begins anew', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type('4..7\r');
		await terminal.until('cannot be read');
		terminal.type('48\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'angles', angles: [48] } }]);
	});

	test('opening a bend shows its caution once a bend', async () => {
		const { live, terminal } = session([asks.RELIEVE], [[{ ...asks.RELIEVE, entry: 10 }]]);
		await terminal.until('Decide');
		terminal.type('+');
		await terminal.until('look for flats and cracks');
		expect(live.answers).toEqual([]);
		terminal.type('+');
		await terminal.until('Saved as line 4');
		terminal.type('+');
		await terminal.until('Saved as line 5');
		expect(live.answers.length).toBe(2);
	});

	test('advice that can be followed in two ways has no shortcut', async () => {
		const { how: _, ...either } = asks.REOPEN;
		const { live, terminal } = session([either]);
		await terminal.until('Decide');
		terminal.type('+\r');
		await terminal.until('Write the number of a choice');
		expect(live.answers).toEqual([]);
	});
});

describe('a session that goes on', () => {
	const resumed = { ...asks.SESSION, resumed: true };

	test.each<[string, Output]>([
		['at a pull', asks.PULL],
		['at another seat', asks.SET_AGAIN],
		['with the old numbers taken', { ...asks.SET, plan: 'old' }],
	])('does not tell again of a correction that cannot be chosen any more: %s', async (_, open) => {
		const { live, terminal } = session([resumed, asks.CORRECTED, open]);
		await terminal.until('Session goes on');
		terminal.type('+');
		await terminal.until(/^(Pull 1|Set the tube)/);
		expect(live.answers).toEqual([]);
	});

	test('tells it again while it can be chosen', async () => {
		const { live, terminal } = session([resumed, asks.CORRECTED, asks.SET]);
		await terminal.until('Session goes on');
		terminal.type('+');
		await terminal.until('Corrected after bend 2');
		terminal.type('2\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'plan', plan: 'old' } }]);
	});
});

describe('what comes back', () => {
	test('a correction while the bend is under way offers no numbers to keep', async () => {
		const { terminal } = session([asks.CORRECTED, asks.MEASURE]);
		await terminal.until('Corrected after bend 2');
		expect(terminal.text).not.toContain('keep the old numbers');
		terminal.type('+');
		await terminal.until('Measure the bend');
	});

	test('pages follow one another to the next ask, and taking back names what is void', async () => {
		const { terminal } = session([asks.DECIDE], [[asks.CORRECTED, { ...asks.SET, bend: 3 }], [asks.DECIDE]]);
		await terminal.until('Decide');
		terminal.type('1\r');
		await terminal.until('Corrected after bend 2');
		terminal.type('+');
		await terminal.until(/Set the tube .* bend 3 of 4/);
		terminal.type('/');
		await terminal.until('Line 4:');
		terminal.type('+');
		await terminal.until('Decide');
	});

	test('why a reading is doubted is said once, with one full stop', async () => {
		const why = '47.9° was expected, give or take 0.7°.';
		const reason = [{ code: 'not-expected' as const, expected: 47.9, sd: 0.7 }];
		const live = new FakeLive([asks.MEASURE], [[{ ...asks.CONFIRM, reason }], [asks.MEASURE]]);
		const doubted = { reading: { of: 'angle' as const, value: 84.1, bend: 2 }, others: [], rest: [] };
		const event = { type: 'reading-doubted' as const, ...doubted, expected: { value: 47.9, sd: 0.7 }, reason };
		live.history = () => {
			const line = { ...answeredBy(1, [event]), void: live.answers.length > 1 };
			return live.answers.length === 0 ? [] : [line];
		};
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'arch.json' });
		await terminal.until('Measure');
		terminal.type('84.1\r');
		const text = await terminal.until('Saved as line 1: bend 2 measured 84.1°, to be read again.');
		expect(text.split(why).length).toBe(2);
		expect(text).not.toContain('..');
		terminal.type('/');
		await terminal.until('Line 1:');
		terminal.type('+');
		// Three lines of why would push the tape's numbers off a small window.
		expect(await terminal.until('Taken back: line 1, bend 2 measured 84.1°, to be read again.')).not.toContain(why);
	});

	test('a sentence of the log that has its own stop gets no other', async () => {
		const live = new FakeLive([asks.MEASURE], [[asks.DECIDE]]);
		const event = { type: 'note-written' as const, text: 'oiled.' };
		live.history = () => (live.answers.length === 0 ? [] : [answeredBy(1, [event])]);
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'arch.json' });
		await terminal.until('Measure');
		terminal.type('48\r');
		expect(await terminal.until('Saved as line 1')).toMatch(/note: oiled\.$/m);
	});

	test('a refusal keeps the entry and says why', async () => {
		const why = 'Bend 9 does not exist: this tube has 4.';
		const reason = [{ code: 'no-such-bend' as const, bend: 9, bends: 4 }];
		const { live, terminal } = session([asks.MEASURE], [[{ note: 'refused', code: 'not-possible', reason }]]);
		await terminal.until('Measure');
		terminal.type('400\r');
		await terminal.until(why);
		expect(terminal.text).toContain('> 400');
		terminal.type('\x1b');
		await terminal.until((text) => !text.includes(why));
		terminal.type('48\r');
		await terminal.until('Saved as line');
		expect(live.answers.at(-1)).toEqual({ action: { do: 'angles', angles: [48] } });
	});

	/** A reading that the disk refuses is typed, and its page left. */
	async function refusedAndLeft({ live, terminal }: Pick<ReturnType<typeof session>, 'live' | 'terminal'>) {
		live.fault = refusal('the disk is read-only.', 5);
		terminal.type('47.9\r');
		await terminal.until('NOT SAVED');
		terminal.type('\x1b');
		await terminal.until((text) => !text.includes('NOT SAVED'));
	}

	test('a full disk is said, the reading stays, and is saved when there is room again', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		live.fault = refusal('the disk is full.', 5);
		terminal.type('47.9\r');
		await terminal.until('NOT SAVED: the disk is full.');
		expect(terminal.text).toContain('> 47.9');
		live.fault = null;
		terminal.type('\r');
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'angles', angles: [47.9] } }]);
	});

	test('a disk that refuses for good: another folder is offered, and taken only when one agrees', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		const went: string[] = [];
		live.rescue = (folder) => {
			went.push(folder);
			live.messages.push(`The session goes on in ${folder}.`);
		};
		live.fault = refusal('the disk is read-only.', 5);
		terminal.type('47.9\r');
		await terminal.until('NOT SAVED: the disk is read-only.');
		await terminal.until('To go on in another folder press Esc, then *.');
		expect(went).toEqual([]);
		terminal.type('\x1b');
		await terminal.until((text) => !text.includes('NOT SAVED'));
		terminal.type('*');
		const [, number] = /(\d+) +go on in another folder/.exec(await terminal.until('go on in another folder: this'))!;
		terminal.type(`${number}\r`);
		await terminal.until('/media/stick');
		terminal.type('/bay\r');
		await terminal.until((text) =>
			text
				.replace(/\s+/g, ' ')
				.includes('goes on in /media/stick/bay. Give the last answer again: it is not saved yet.'),
		);
		expect(went).toEqual(['/media/stick/bay']);
		live.fault = null;
		terminal.type('47.9\r');
		await terminal.until('Saved as line');
	});

	test('where another session has the log, neither a second try nor another folder is offered', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		live.rescue = () => {};
		live.fault = refusal('Another session has taken over the log.', 4);
		terminal.type('47.9\r');
		const shown = await terminal.until('NOT SAVED: Another session has taken over the log.');
		expect(shown).not.toMatch(/tries again|another folder/);
		terminal.type('\x1b');
		await terminal.until((text) => !text.includes('NOT SAVED'));
		terminal.type('*');
		await terminal.until('leave, to go on another time');
		expect(terminal.text).not.toContain('another folder');
	});

	test('a log that takes no more: no second try is offered, another folder is', async () => {
		const cause = { errno: 'EIO', text: 'EIO' };
		const why = { code: 'system', cause } as const;
		const reason = [{ code: 'not-saved' as const, log: '/logs/a.log', lines: 3, again: false, why }];
		const { live, terminal } = session([asks.MEASURE], [[{ note: 'refused', code: 'not-saved', reason }]]);
		live.rescue = () => {};
		await terminal.until('Measure');
		terminal.type('47.9\r');
		const shown = await terminal.until('NOT SAVED: This reading is not saved.');
		expect(shown).not.toContain('tries again');
		expect(shown.replace(/\s+/g, ' ')).toContain('To go on in another folder press Esc, then *.');
		expect(terminal.text).toContain('> 47.9');
	});

	test('a folder can be written by hand, from its first letter on', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		const went: string[] = [];
		live.rescue = (folder) => void went.push(folder);
		live.rescuePlace = () => '/a';
		await terminal.until('Measure');
		await refusedAndLeft({ live, terminal });
		terminal.type('*');
		const [, number] = /(\d+) +go on in another folder/.exec(await terminal.until('go on in another folder: this'))!;
		terminal.type(`${number}\r`);
		await terminal.until('> /a');
		terminal.type('\x7f\x7f');
		await terminal.until((text) => !text.includes('/a'));
		terminal.type('/media/key\r');
		await terminal.until('Give the last answer again');
		expect(went).toEqual(['/media/key']);
	});

	test('leaving while the disk refuses ends with 5', async () => {
		const { live, terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		await refusedAndLeft({ live, terminal });
		terminal.type('*4\r');
		expect(await ended).toBe(5);
	});

	test('what the log has to say about itself is on the screen', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		live.said = 'The log has moved to /spare/aft-arch-1.log.';
		terminal.type('47.9\r');
		await terminal.until('The log has moved to /spare/aft-arch-1.log.');
	});

	test('an error of the program itself ends the screen, and the terminal is as before', async () => {
		const { live, terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		live.fault = new TypeError('bug');
		terminal.type('47.9\r');
		await expect(ended).rejects.toThrow('bug');
		await terminal.until(() => !terminal.alternate);
		expect(terminal.rawMode).toBe(false);
		expect(live.closed).toBe(true);
	});
});

describe('the end', () => {
	test('leaving ends with 3 and closes the session', async () => {
		const { live, terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type('*4\r');
		expect(await ended).toBe(3);
		expect(live.answers).toEqual([{ action: { do: 'quit' } }]);
		expect(live.closed).toBe(true);
	});

	test('done ends with 0', async () => {
		const { terminal, ended } = session([asks.DECIDE], [[asks.DONE]]);
		await terminal.until('Decide');
		terminal.type('1\r');
		await terminal.until('The tube fits');
		terminal.type('+');
		expect(await ended).toBe(0);
	});

	test('Ctrl-C ends with 130 and leaves terminal and log in order, also within a text', async () => {
		const { live, terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		expect(terminal.alternate).toBe(true);
		expect(terminal.rawMode).toBe(true);
		terminal.type('*1\rhalf a no');
		await terminal.until('half a no');
		terminal.type(CTRL_C);
		expect(await ended).toBe(130);
		expect(terminal.rawMode).toBe(false);
		expect(terminal.raw.endsWith('\x1b[?25h\x1b[?1049l')).toBe(true);
		expect(live.answers).toEqual([]);
		expect(live.closed).toBe(true);
	});

	test('a window that was closed ends with 129', async () => {
		const { terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.hangUp();
		expect(await ended).toBe(129);
	});

	test('nothing is left listening to the process', async () => {
		const count = () =>
			['SIGTERM', 'SIGINT', 'SIGHUP', 'SIGCONT', 'exit', 'uncaughtExceptionMonitor'].map((name) =>
				process.listenerCount(name),
			);
		const before = count();
		const { terminal, ended } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type(CTRL_C);
		await ended;
		expect(count()).toEqual(before);
	});
});

describe('home', () => {
	test('an interrupted session goes on', async () => {
		const port = new FakeHome(new FakeLive([asks.MEASURE]), ROWS);
		const { terminal } = start({ port });
		await terminal.until('Interrupted');
		terminal.type('1\r');
		await terminal.until('Measure');
		expect(port.opened).toEqual([{ target: 'aft-arch-1', resume: true }]);
	});

	test.each([
		['+', { target: 'aft-arch-1', resume: true }],
		['2\r', { target: 'jobs/aft-arch.json', resume: false, as: { mirror: false, from: 'start' } }],
	])('a job that was interrupted asks whether to go on: %s', async (keys, opened) => {
		const port = new FakeHome(new FakeLive([asks.MEASURE]), ROWS);
		const { terminal } = start({ port });
		await terminal.until('Interrupted');
		terminal.type('2\r');
		await terminal.until(/begin another tube/i);
		terminal.type(keys);
		await terminal.until('Measure');
		expect(port.opened).toEqual([opened]);
	});

	test('a session left comes back home, and leaving ends with 0', async () => {
		const live = new FakeLive([asks.MEASURE]);
		const { terminal, ended } = start({ port: new FakeHome(live, ROWS) });
		await terminal.until('Interrupted');
		terminal.type('3\r+');
		await terminal.until('Measure');
		terminal.type('*4\r');
		await terminal.until('Interrupted');
		expect(live.closed).toBe(true);
		terminal.type('leave\r');
		expect(await ended).toBe(0);
	});

	test('a session that cannot be opened is said there', async () => {
		const port = new FakeHome(null, ROWS);
		port.fault = refusal('Another session holds this log.', 4);
		const { terminal } = start({ port });
		await terminal.until('Interrupted');
		terminal.type('1\r');
		await terminal.until('Another session holds this log.');
	});

	/** From home to the whole of a kept session as one text. */
	async function readAsText(terminal: ReturnType<typeof start>['terminal']): Promise<void> {
		await terminal.until('Interrupted');
		terminal.type('8\r');
		await terminal.until('Kept sessions');
		terminal.type('2\r');
		await terminal.until(AS_TEXT);
		terminal.type(`${AS_TEXT.exec(terminal.text)![1]}\r`);
	}
	const AS_TEXT = /(\d+)\W+all of it as one text/;

	test('a review as text is read page by page, by the numeric pad too', async () => {
		const { terminal } = start({ port: new FakeHome(null, { ...ROWS, story: keptSession() }) });
		await readAsText(terminal);
		await terminal.until('lines 1 to 18 of 50');
		terminal.type('+');
		await terminal.until('lines 19 to 36 of 50');
		terminal.type('2');
		await terminal.until('lines 20 to 37 of 50');
		terminal.type('1');
		await terminal.until('review line 50');
		terminal.type('/');
		await terminal.until(AS_TEXT);
		terminal.type('/');
		await terminal.until('Kept sessions');
		terminal.type('/');
		await terminal.until('Interrupted');
	});

	test('a review has no line cut in a narrow window, and stays within its lines when that changes', async () => {
		const long = `bend 1  drawn 42, made 41.9 give or take 0.1, after ${'pull '.repeat(12)}end`;
		const rows = { ...ROWS, review: [long, ...ROWS.review], story: keptSession() };
		const { terminal } = start({ port: new FakeHome(null, rows) }, { columns: 60, rows: 20 });
		await readAsText(terminal);
		await terminal.until('lines 1 to 14 of 52');
		expect(terminal.lines).toContain('bend 1  drawn 42, made 41.9 give or take 0.1, after pull');
		expect(terminal.text).toContain('end');
		terminal.type('1');
		await terminal.until('review line 50');
		terminal.resize({ columns: 160, rows: 50 });
		await terminal.until('lines 8 to 51 of 51');
	});

	test('no job file is said', async () => {
		const { terminal } = start({ port: new FakeHome(null) });
		await terminal.until('There is no job file here');
	});
});

describe('one job from the command line', () => {
	test('offers to go on with the session that was interrupted', async () => {
		const port = new FakeHome(new FakeLive([asks.MEASURE]), ROWS);
		const { terminal, ended } = start({ port, jobPath: 'jobs/aft-arch.json' });
		await terminal.until('go on where it was left');
		terminal.type('+');
		await terminal.until('Measure');
		expect(port.opened).toEqual([{ target: 'aft-arch-1', resume: true }]);
		terminal.type('*4\r');
		expect(await ended).toBe(3);
	});

	test.each([
		[true, { target: 'aft-arch-1', resume: true }],
		['other-2', { target: 'other-2', resume: true }],
		[false, { target: 'jobs/aft-arch.json', resume: false }],
	])('resume %s does not ask', async (resume, opened) => {
		const port = new FakeHome(new FakeLive([asks.MEASURE]), ROWS);
		const { terminal } = start({ port, jobPath: 'jobs/aft-arch.json', resume });
		await terminal.until('Measure');
		expect(port.opened).toEqual([opened]);
	});

	test('a session that cannot be opened is left to the command line', async () => {
		const port = new FakeHome(null);
		port.fault = refusal('The log is damaged at line 7.', 6);
		const { terminal, ended } = start({ port, jobPath: 'jobs/step.json' });
		await expect(ended).rejects.toThrow('damaged at line 7');
		await terminal.until(() => !terminal.alternate);
	});
});

describe('the window', () => {
	test('reflows through any sizes and scrolls nothing away', async () => {
		const { terminal } = session([asks.SET, asks.PULL]);
		await terminal.until('STOP');
		const before = terminal.text;
		for (const [columns, rows] of [
			[60, 20],
			[120, 40],
			[33, 10],
			[100, 22],
		] as const) {
			terminal.resize({ columns, rows });
			const wanted = columns < 60 ? '60 x 20 needed' : 'STOP';
			await terminal.until((text) => text.includes(wanted) && text.split('\n').length <= rows);
		}
		terminal.resize(SIZE);
		await terminal.until((text) => text === before);
		expect(terminal.scrolledOut).toBe(0);
		expect(terminal.raw).not.toContain('\x1b[3J');
	});

	test.each([
		[40, 12, 'Make the window larger: 60 x 20 needed'],
		[20, 5, '60 x 20 needed'],
	])('%i by %i asks for it shorter', async (columns, rows, text) => {
		const live = new FakeLive([asks.SET]);
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'a' }, { columns, rows });
		expect(await terminal.until('needed')).toBe(text);
	});

	test.each([
		[asks.SESSION, 'understood'],
		[asks.DONE, 'finish'],
	])('a long path of the log is broken, not cut: %#', async (note, until) => {
		const log = `/home/${'rescue/'.repeat(15)}aft-arch-1.log`;
		const { terminal } = session([{ ...note, log }]);
		await terminal.until(until);
		expect(terminal.text.replaceAll('\n', '')).toContain(`Log: ${log}`);
	});

	test.each([
		[59, 20],
		[60, 19],
	])('%i by %i asks for more room in one line', async (columns, rows) => {
		const live = new FakeLive([asks.SET]);
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'a' }, { columns, rows });
		expect(await terminal.until('Make')).toBe(
			`Make the window larger: 60 by 20 at least, now ${columns} by ${rows}.`.slice(0, columns),
		);
	});

	test('0 by 0 is drawn as 80 by 24', async () => {
		const live = new FakeLive([asks.SET]);
		const terminal = new HeadlessTerminal(SIZE);
		Object.assign(terminal.stdout, { columns: 0, rows: 0 });
		const ended = openScreen({
			port: new FakeHome(live),
			jobPath: 'a',
			stdin: terminal.stdin,
			stdout: terminal.stdout,
			environment: {},
		});
		running.push({ terminal, ended });
		await terminal.until(/^Set the tube {40,}Aft arch · bend 2 of 4$/m);
	});

	test('a key draws only the row that it changes', async () => {
		const { terminal } = session([asks.SET, asks.PULL]);
		await terminal.until('STOP');
		// With the first key Ink has taken over from the first frame.
		terminal.type('5');
		await terminal.until('> 5');
		const before = terminal.raw.length;
		terminal.type('1');
		await terminal.until('> 51');
		expect(terminal.raw.length - before).toBeLessThan(120);
	});
});

describe('how it is drawn', () => {
	const SPOKEN = [
		'MARK 76 3/8 in from the far end',
		'TURN 180° either way',
		'EASE UP 49° from here',
		'STOP 51.5° held under load',
		'wanted 48.2° (drawing 48°), from 47.7° to 48.7°',
		'1 stop 51.5° > 47.9°, give or take 0.3°',
	];

	test('a screen reader gets the lines that are new, in words, without escape sequences', async () => {
		const live = new FakeLive([asks.SET, asks.PULL]);
		const environment = { TERM: 'xterm', INK_SCREEN_READER: 'true' };
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'a', environment });
		await terminal.until('Pull to 51.5°');
		expect(terminal.raw).not.toMatch(/[\u2500-\u259f\u2800-\u28ff]/);
		expect(terminal.raw).not.toContain('\x1b');
		for (const words of SPOKEN) expect(terminal.raw).toContain(words);
		const before = terminal.raw.length;
		terminal.type('5');
		await terminal.until(/> 5/);
		expect(
			terminal.raw
				.slice(before)
				.split(/\r?\n/)
				.filter((line) => line !== ''),
		).toEqual(['> 5   = 5°']);
	});

	test('a plain terminal gets ASCII and no escape sequence', async () => {
		const live = new FakeLive([asks.SET, asks.PULL]);
		const { terminal } = start({ port: new FakeHome(live), jobPath: 'a', environment: { TERM: 'dumb' } });
		await terminal.until('STOP');
		expect(terminal.raw).toMatch(/^[\n\r -~]*$/);
		expect(terminal.text).toContain('######');
	});
});

describe('walking back through the readings', () => {
	const UP = '\x1b[A';
	const DOWN = '\x1b[B';

	test('arrow keys lead from the newest reading to the oldest and back to the question', async () => {
		const { terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type(UP);
		await terminal.until(/> +2 +bend 2 +dial after release +47.5/);
		terminal.type(UP);
		await terminal.until(/> +2 +bend 2 +dial, held under load +51.5/);
		terminal.type(UP + DOWN);
		await terminal.until(/> +2 +bend 2 +dial after release/);
		terminal.type(DOWN);
		await terminal.until('Measure');
	});

	test.each<[string, Output[], string]>([
		['set', [asks.SET], ''],
		['set again', [asks.SET_AGAIN], ''],
		['pull', [asks.SET, asks.PULL], ''],
		['released', [asks.SET, asks.PULL], '51.5\r'],
		['measure', [asks.MEASURE], ''],
		['confirm', [asks.CONFIRM], ''],
		['check', [asks.CHECK], ''],
		['least diameter', [asks.CHECK_OVALITY], '1.76\r'],
		['decide', [asks.DECIDE], ''],
		['measure first', [asks.MEASURE_AGAIN], ''],
		['corrected', [asks.CORRECTED, asks.SET], ''],
	])('the arrow key leads there from %s and back to it, and is told', async (_, outputs, keys) => {
		const port = () => new FakeHome(new FakeLive(outputs, [], undefined, KEPT));
		const look = (more: string) => frameText(port(), { columns: 60, rows: 20 }, { jobPath: 'a', keys: keys + more });
		const question = await look('');
		expect(question).toMatch(/ Up {2}(readings|log)\b/);
		expect(await look(UP)).toMatch(/^Earlier readings/);
		const [title] = question.split(/ {2,}/);
		expect((await look(`${UP}/`)).startsWith(title!)).toBe(true);
	});

	test('what is typed at a question is not walked away from', async () => {
		const { terminal } = session([asks.MEASURE]);
		await terminal.until('Measure');
		terminal.type(`47.${UP}9`);
		await terminal.until('> 47.9');
	});

	test('what a correction changes is shown before it counts', async () => {
		const { live, terminal } = session([asks.MEASURE], [[asks.MEASURE]]);
		live.would = {
			refused: null,
			doubted: null,
			made: [{ bend: 1, angle: { before: 41.2, after: 42.1 } }],
			plan: [
				{
					bend: 3,
					mark: { before: 64, after: 64.5 },
					rotation: { before: 180, after: 180 },
					angle: { before: 48, after: 47.2 },
				},
			],
			stop: { before: 51.5, after: 52 },
			next: null,
		};
		await terminal.until('Measure');
		terminal.type(`${UP}46.5\r`);
		await terminal.until('Correct it?');
		expect(terminal.text).toContain('dial after release, not 47.5° but 46.5°');
		expect(terminal.text).toMatch(/bend 1 made +41.2° +-> +42.1°/);
		expect(terminal.text).toMatch(/bend 3 mark +64 in +-> +64 1\/2 in/);
		expect(terminal.text).toMatch(/stop of this pull +51.5° +-> +52°/);
		expect(live.answers).toEqual([]);
		terminal.type('/');
		await terminal.until('Measure');
		expect(live.answers).toEqual([]);
		terminal.type(`${UP}46.5\r+`);
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'amend', entry: 2, reading: 46.5, of: 'released' } }]);
	});

	test('a correction that would be refused is said at once', async () => {
		const { live, terminal } = session([asks.MEASURE]);
		const refused = [{ code: 'line-undone' as const, line: 2 }];
		live.would = { refused, doubted: null, made: [], plan: [], stop: null, next: null };
		await terminal.until('Measure');
		terminal.type(`${UP}465\r`);
		await terminal.until('Line 2 of the log was taken back');
		expect(live.answers).toEqual([]);
	});
});
