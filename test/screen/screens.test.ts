import { describe, expect, test } from 'vitest';
import type { PullAsk } from '../../src/session/protocol/asks.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import type { Size } from '../../src/terminal/output.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import * as asks from '../helpers/screen/asks.ts';
import { BATCH, BATCH_WAITS, LAST_PIECE, PIECE, PIECE_HELD, PIECE_MOVED } from '../helpers/screen/batch.ts';
import { ARCH, answeredBy, FakeHome, FakeLive, KEPT, ROWS } from '../helpers/screen/fake-ports.ts';
import { type FrameOptions, frameText } from '../helpers/screen/page-frame.ts';
import { asKept, runScreen } from '../helpers/screen/run-screen.ts';
import { keptText } from '../helpers/screen/screen-fixtures.ts';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 60, rows: 20 },
];

/** A window with room, and one that fills a large screen. */
const LARGER = [
	{ columns: 100, rows: 30 },
	{ columns: 160, rows: 50 },
];

type PageCase = [name: string, outputs: Output[], keys: string, title: string, look?: FrameOptions];

/** Each page of a session: what the session has put out, the keys that lead to the page, and its title. */
const PAGES: PageCase[] = [
	['start', [asks.SESSION, asks.SET], '', 'New session'],
	['start-marks', [asks.SESSION, asks.SET_FIRST], '', 'New session'],
	['layout', [asks.SET_FIRST], 'h2\r', 'Lay out the tube'],
	['piece', [PIECE, asks.SET_FIRST], '', 'Piece 8 of 10'],
	['piece-held', [PIECE_HELD, asks.WARNINGS, asks.SET_FIRST], '', 'Piece 8 of 10'],
	['piece-moved', [PIECE_MOVED, asks.WARNINGS, asks.SET_FIRST], '', 'Piece 8 of 10'],
	['piece-more', [PIECE, asks.SET_FIRST], '*', 'certificate'],
	['piece-heat', [PIECE, asks.SET_FIRST], '*1\r', 'Heat or certificate'],
	['piece-set', [PIECE, asks.SET], '+', 'piece 8 of 10'],
	['piece-done', [PIECE, asks.DONE], '+', 'next: piece 8 of 10'],
	['piece-done-more', [PIECE, asks.DONE], '+*', 'the batch so far'],
	['piece-waits', [LAST_PIECE, asks.DONE], '+', 'go on with piece 8 of 10'],
	['piece-next', [PIECE, asks.DONE], '++', 'Piece 9 of 10'],
	['batch', [PIECE, asks.DONE], '+*3\r', 'The batch'],
	['set-first', [asks.SET_FIRST], '', 'Set the tube'],
	['set-turned', [asks.SET_TURNED], '', 'Set the tube'],
	['set-in-mm', [asks.SET_TURNED], 'uu', 'MARK, mm'],
	['set-from-start', [asks.SET], 'mc', 'from the start end'],
	['help', [asks.SET], 'h', 'Help'],
	['shown', [asks.SET], 'h1\r', 'bell'],
	['topics', [asks.SET], 'h3\r', 'Topics of help'],
	['warnings', [asks.SESSION, asks.WARNINGS, asks.SET], '', 'New session'],
	['set', [asks.SET], '', 'Set the tube'],
	['change-die', [asks.SET_DIE], '', 'Change the die'],
	['set-die', [asks.SET_DIE], '+', 'Set the tube'],
	['set-again', [asks.SET_AGAIN], '', 'set-up 2'],
	['set-still', [asks.SET_AGAIN], '*', 'it never left the die'],
	['detail', [asks.SET], '*7\r', 'mark'],
	['set-details', [asks.SET], '*7\r39.7\r', 'also tells'],
	['pull', [asks.SET, asks.PULL], '', 'Pull 1'],
	['pull-first', [asks.SET_FIRST, { ...asks.PULL, bend: 1 }], '', 'Pull 1'],
	['pull-third', [asks.SET_TURNED, { ...asks.PULL, pull: 3, lead: null }], '', 'Pull 3'],
	['pull-limit', [asks.SET, { ...asks.PULL, limit: true, lead: null, pull: 3 }], '', 'Pull 3'],
	['released', [asks.SET, asks.PULL], '51.5\r', 'after release'],
	['measure', [asks.MEASURE], '47', 'Measure'],
	['measure-second', [{ ...asks.MEASURE, readings: 1, reason: [] }], '', 'Measure'],
	['confirm', [asks.CONFIRM], '', 'right?'],
	['confirm-loaded', [asks.SET, asks.CONFIRM_LOADED], '', 'right?'],
	['confirm-ahead', [asks.CONFIRM], '48.1\r', 'Typed before', { gap: 20 }],
	['confirm-check', [asks.CONFIRM_CHECK], '', 'right?'],
	['check-drop', [asks.CHECK], '14 5/16', 'Check: rise'],
	['check-angle', [asks.CHECK_ANGLE], '', 'Check: legs'],
	['check-span', [asks.CHECK_SPAN], '', 'Check: reach'],
	['check-out', [asks.CHECK_OUT], '', 'Check: lie'],
	['check-ovality', [asks.CHECK_OVALITY], '', 'Check: section'],
	['least', [asks.CHECK_OVALITY], '1.76\r', 'Least'],
	['decide', [asks.DECIDE], '', 'Decide'],
	['decide-relieve', [asks.RELIEVE], '', 'Decide'],
	['decide-reopen', [asks.REOPEN], '', 'Decide'],
	['decide-limit', [asks.LIMIT], '', 'Decide'],
	['decide-scrap', [asks.GIVEN_UP], '', 'Decide'],
	['decide-hopeless', [asks.HOPELESS], '', 'Decide'],
	['why', [asks.HOPELESS], '*7\r', 'Why'],
	['decide-measure', [asks.MEASURE_AGAIN], '', 'Decide'],
	['decide-read-again', [asks.READ_AGAIN], '', 'Decide'],
	['measure-again', [asks.MEASURE_AGAIN], '+', 'Measure bend 1 again'],
	['read-again', [asks.READ_AGAIN], '+', 'Read the rise again'],
	['measure-any-again', [asks.DECIDE], '5\r', 'Measure a bend again'],
	['relief', [asks.RELIEVE], '+', 'Caution'],
	['corrected', [asks.CORRECTED, asks.SET], '', 'Corrected'],
	['corrected-first', [asks.CORRECTED_FIRST, asks.SET], '', 'Corrected'],
	['as-made', [{ ...asks.CORRECTED, remaining: [], without: asks.CORRECTED.predicted }, asks.DECIDE], '', 'as made'],
	['done', [asks.DONE], '', 'Done'],
	['may-fit', [asks.MAY_FIT], '', 'Done'],
	['cuts', [asks.DONE], '*', 'Cuts and last looks'],
	['scrapped', [asks.SCRAPPED], '', 'Scrapped'],
	['more', [asks.SET], '*', 'More'],
	['undo', [asks.MEASURE], '/', 'Take back'],
	['walk', [asks.MEASURE], '\x1b[A\x1b[A', 'dial, held under load: what'],
	['amend-sure', [asks.MEASURE], '\x1b[A46.5\r', 'Correct it?'],
	['amend', [asks.MEASURE], '*5\r', 'Correct an earlier'],
	['amend-which', [asks.MEASURE], '*5\r1\r', 'Correct line 2'],
	['amend-value', [asks.MEASURE], '*5\r1\r2\r', 'What it really was'],
	['evidence', [asks.MEASURE], '*3\r', 'Something else'],
	['evidence-bend', [asks.MEASURE], '*3\r1\r', 'which bend'],
	['evidence-value', [asks.MEASURE], '*3\r1\r3\r', 'Bend 3, measured'],
	['what-if', [asks.REOPEN], '*7\r', 'What if'],
	['reopen', [asks.MEASURE], '*6\r', 'Go back to a made bend'],
	['reopen-how', [asks.MEASURE], '*6\r1\r', 'Go back to bend 1'],
	['note', [asks.MEASURE], '*1\rtight clamp', 'tight clamp'],
	['scrap', [asks.MEASURE], '*11\r', 'Why is it scrap?'],
	['scrap-sure', [asks.MEASURE], '*11\rkinked at bend 2\r', 'Scrap the tube?'],
];

/** A session whose bend at work has had as many pulls as its ask says, on a tube of which one bend is made. */
function liveOf(outputs: Output[]): FakeLive {
	const second = outputs.some((output) => 'ask' in output && output.ask === 'measure' && output.readings === 1);
	const live = new FakeLive(outputs, [], undefined, second ? [...KEPT, FIRST_OF_TWO] : KEPT);
	const pull = outputs.find((output): output is PullAsk => 'ask' in output && output.ask === 'pull');
	return Object.assign(live, {
		...(isPiece(outputs) && { heat: () => 'H 4471' }),
		...(isPiece(outputs) && { batch: () => (outputs.includes(LAST_PIECE) ? BATCH_WAITS : BATCH) }),
		pulls: () => PULLS.slice(0, pull === undefined ? PULLS.length : pull.pull - 1),
		shape: () => finishedShape(ARCH, { value: 1.01 }),
	});
}

const isPiece = (outputs: readonly Output[]) =>
	outputs.some((output) => 'note' in output && output.note === 'session' && output.piece !== undefined);

const FIRST_OF_TWO = answeredBy(5, [{ type: 'reading-noted', reading: { of: 'angle', value: 47.6, bend: 2 } }]);

const PULLS = [
	{ loaded: 44, released: 40.5, measured: [40.7, 40.9] },
	{ loaded: 48.5, released: 45.25, measured: [] },
];

const session = (outputs: Output[]) =>
	new FakeHome(liveOf(outputs), { another: liveOf([{ ...PIECE, piece: 9 }, asks.SET_FIRST]) });

async function showsPage(
	size: Size,
	[name, outputs, keys, title, own]: PageCase,
	look: FrameOptions = {},
): Promise<void> {
	const shown = await frameText(session(outputs), size, { jobPath: 'arch.json', keys, ...own, ...look });
	expect(shown).toContain(title);
	expect(shown).toBe(keptText(shown, name, size));
}

describe.each([...SIZES, ...LARGER])('at $columns by $rows', (size) => {
	test.each(PAGES)('the page %s', (...page) => showsPage(size, page));
});

describe.each(SIZES)('at $columns by $rows', (size) => {
	test('the home page', async () => {
		const shown = await frameText(new FakeHome(null, ROWS), size);
		expect(shown).toBe(keptText(shown, 'home', size));
	});
});

describe('in ASCII only', () => {
	test.each([
		['ascii-pull', [asks.SET, asks.PULL], '', 'Pull 1'],
		['ascii-corrected', [asks.CORRECTED, asks.SET], '', 'Corrected'],
	] satisfies PageCase[])('the page %s', async (...page) => {
		await showsPage(SIZES[0]!, page, { ascii: true });
		await showsPage(LARGER[1]!, page, { environment: { TERM: 'xterm', LANG: 'C' } });
	});
});

/** Whole screens, by way of Ink and a terminal: a few of each size, which between them have all that Ink draws. */
const WHOLE: [name: string, size: Size][] = [
	['start', SIZES[0]!],
	['set-turned', SIZES[0]!],
	['pull-third', SIZES[0]!],
	['walk', SIZES[0]!],
	['note', SIZES[0]!],
	['set-first', SIZES[1]!],
	['decide', SIZES[1]!],
	['more', SIZES[1]!],
	['check-drop', LARGER[0]!],
	['corrected', LARGER[0]!],
	['pull', LARGER[1]!],
	['done', LARGER[1]!],
];

test.each(WHOLE)('the whole screen %s', async (name, size) => {
	const [, outputs, keys, title] = PAGES.find(([of]) => of === name)!;
	const terminal = runScreen(session(outputs), size, { jobPath: 'arch.json' });
	await terminal.until(asks.ARCH_NAME);
	terminal.type(keys);
	await terminal.until(title);
	await asKept(terminal, name, size);
});
