import { beforeAll, describe, expect, test } from 'vitest';
import { homeState } from '../../src/screen/home/home-state.ts';
import { reviewView } from '../../src/screen/review/index.ts';
import { LIST, PLOTS, type ReviewPage } from '../../src/screen/review/review-page.ts';
import type { Opened } from '../../src/screen/review/review-port.ts';
import { FakeHome, ROWS } from '../helpers/screen/fake-ports.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';
import { type FrameOptions, frameText } from '../helpers/screen/page-frame.ts';
import { keptText } from '../helpers/screen/screen-fixtures.ts';

const SIZES = [
	{ columns: 60, rows: 20 },
	{ columns: 80, rows: 24 },
	{ columns: 100, rows: 30 },
	{ columns: 160, rows: 50 },
];

const TO_LIST = 'look at a kept\r';
const RIGHT = '\x1b[C';
const UP = '\x1b[A';

/** Each page of the review: the keys that lead to it from the list, and its title. */
const PAGES: [name: string, keys: string, title: string][] = [
	['list', '', 'Kept sessions'],
	['searched', 'bay done', 'Search: bay done'],
	['narrow', '*', 'Narrow and sort'],
	['narrow-job', '*1\r', 'Only one job'],
	['narrowed', '*1\r1\r', 'Only job'],
	['story', '+', 'Session 20310302'],
	['bend', '++', 'Bend 1 of 3'],
	['bend-moved', '++222', 'Bend 1 of 3'],
	['corrections', '+++++', 'Corrections'],
	['checks', '++++++', 'Checks and notes'],
	['tube', '+++++++', 'The tube'],
	['tube-turned', `+++++++${RIGHT}${RIGHT}${UP}`, 'The tube'],
	['tube-enlarged', '+++++++0', 'The tube'],
	['line-first', '++++++++', 'As it began'],
	['line', '++++++++666666', 'Line 6 of'],
	['plot-springback', '++++++++1+', 'Springback'],
	['plot-landed', `++++++++1+${RIGHT}`, 'Where stops landed'],
	['plot-errors', '++++++++1+66', 'Error of each bend'],
	['plot-pulls', '++++++++1+666', 'Pulls a bend'],
	['plot-scatter', '++++++++1+4', 'Scatter by kind'],
	['taught', '++++++++1+4+', 'What it taught'],
	['help', '+h', 'Help: kept sessions'],
];

let story: Opened;
beforeAll(() => {
	story = keptSession();
});

const SESSIONS = ROWS.sessions.map((row, at) => ({
	...row,
	bender: at === 0 ? 'bay two' : 'bay one',
	...(at === 2 ? { heat: 'H 4471' } : {}),
}));

async function shows(
	size: (typeof SIZES)[number],
	[name, keys, title]: (typeof PAGES)[number],
	look: FrameOptions = {},
) {
	const shown = await frameText(new FakeHome(null, { ...ROWS, sessions: SESSIONS, story }), size, {
		keys: `${TO_LIST}${keys}`,
		...look,
	});
	expect(shown).toContain(title);
	expect(shown).toBe(keptText(shown, `review-${name}`, size));
}

describe.each(SIZES)('at $columns by $rows', (size) => {
	test.each(PAGES)('the page %s of the review', (...page) => shows(size, page));
});

describe('in ASCII only', () => {
	test.each(SIZES)('a plot and a tube at $columns by $rows', async (size) => {
		const of = (name: string) => PAGES.find(([each]) => each === name)!;
		for (const name of ['plot-springback', 'plot-scatter', 'tube']) {
			const [, keys, title] = of(name);
			const shown = await frameText(new FakeHome(null, { ...ROWS, sessions: SESSIONS, story }), size, {
				keys: `${TO_LIST}${keys}`,
				ascii: true,
			});
			expect(shown).toMatch(/^[\n -~]*$/);
			await shows(size, [`ascii-${name}`, keys, title], { ascii: true });
		}
	});
});

const EACH: ReviewPage[] = [
	...[LIST, { review: 'narrow', by: null, list: LIST } as const, { review: 'narrow', by: 'job', list: LIST } as const],
	...[{ review: 'story' } as const, { review: 'bend', bend: 2, top: 0 } as const],
	...[{ review: 'corrections', top: 0 } as const, { review: 'checks', top: 0 } as const],
	...[{ review: 'tube', across: 1, over: 2, enlarged: true } as const, { review: 'line', at: 4 } as const],
	...PLOTS.map((plot) => ({ review: 'plot', plot }) as const),
	{ review: 'taught', top: 0 },
	{ review: 'help', from: LIST },
];

describe('every key', () => {
	test.each(EACH)('means what it means everywhere, and is on the screen: $review $plot', (at) => {
		const state = homeState(new FakeHome(null, { ...ROWS, sessions: SESSIONS }));
		const { prompt, keys = [], shortcuts = {}, moves = {} } = reviewView(state, at, story);
		expect(prompt.star?.label ?? 'more').toBe('more');
		expect(prompt.back?.label).toBe('back');
		expect(prompt.plus?.label ?? '').not.toMatch(/^(help|more|back)$/);
		const shown = keys.flatMap(([key]) => key.split(' '));
		const typed = [...Object.keys(shortcuts), ...Object.keys(moves)].filter((key) => key.length === 1);
		expect(typed.filter((key) => !shown.includes(key) && !(key === '?' && shown.includes('h')))).toEqual([]);
	});
});

describe('what the page of a session says', () => {
	const page = (keys: string, size = SIZES[1]!) => {
		return frameText(new FakeHome(null, { ...ROWS, sessions: SESSIONS, story }), size, { keys: `${TO_LIST}${keys}` });
	};

	test('after a search the list is as it was left', async () => {
		expect(await page('+/')).toContain('Kept sessions');
		expect(await page('step+/')).toMatch(/Search: step +2 found/);
	});

	test('a turned tube is as it was after a whole turn', async () => {
		expect(await page(`+++++++${'6'.repeat(24)}`)).toBe(await page('+++++++'));
		expect(await page('+++++++6')).not.toBe(await page('+++++++'));
		expect(await page('+++++++68425')).toBe(await page('+++++++'));
	});

	test('p prints the record and says where it lies, or why it does not', async () => {
		expect(await page('+p')).toContain('Written, to be printed: rail-record-');
		const home = new FakeHome(null, { ...ROWS, sessions: SESSIONS, story });
		home.sheetFault = Object.assign(new Error('rail-record.pdf was not written: the disk is full.'), { exitCode: 5 });
		expect(await frameText(home, SIZES[1]!, { keys: `${TO_LIST}+p` })).toContain('the disk is full.');
	});

	test('a session that cannot be read says why on the list', async () => {
		const home = new FakeHome(null, { ...ROWS, sessions: SESSIONS });
		expect(await frameText(home, SIZES[1]!, { keys: `${TO_LIST}+` })).toContain('No session aft-arch-1 is kept here.');
	});
});
