import { describe, expect, test } from 'vitest';
import { homeState } from '../../src/screen/home/home-state.ts';
import type { HomePage } from '../../src/screen/home/home-view.ts';
import { homeView } from '../../src/screen/home/pages/index.ts';
import { viewOf } from '../../src/screen/session/pages/index.ts';
import { opened, type Page } from '../../src/screen/session/session-state.ts';
import { shortcutsOf } from '../../src/screen/session/shortcuts.ts';
import { USUAL_DISPLAY } from '../../src/screen/shell/display.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import * as asks from '../helpers/screen/asks.ts';
import { FakeHome, FakeLive, KEPT, ROWS } from '../helpers/screen/fake-ports.ts';

/** Every question, and every page that can be opened beside one. */
const ASKED: Output[] = [
	...[asks.SET, asks.SET_AGAIN, asks.PULL, asks.MEASURE, asks.CONFIRM, asks.CHECK, asks.CHECK_OVALITY],
	...[asks.DECIDE, asks.RELIEVE, asks.REOPEN],
];
const [reading] = KEPT[1]!.readings;
const BESIDE: Page[] = [
	...[{ page: 'start', note: asks.SESSION } as const, { page: 'layout' } as const, { page: 'more' } as const],
	...[{ page: 'warnings', note: asks.WARNINGS } as const, { page: 'corrected', note: asks.CORRECTED } as const],
	...[{ page: 'help', from: { page: 'ask' } } as const, { page: 'shown', from: { page: 'ask' } } as const],
	...[{ page: 'topics', from: { page: 'ask' } } as const, { page: 'undo' } as const, { page: 'amend' } as const],
	...[
		{ page: 'amendWhich', entry: KEPT[1]! } as const,
		{ page: 'amendValue', entry: KEPT[1]!, reading: reading! } as const,
	],
	...[
		{ page: 'walk', at: 0, from: { page: 'ask' } } as const,
		{ page: 'evidence' } as const,
		{ page: 'reopen' } as const,
	],
	...[{ page: 'evidenceBend', kind: 'leg' } as const, { page: 'evidenceValue', kind: 'leg', bend: 1 } as const],
	...[{ page: 'measureAgain' } as const, { page: 'whatIf' } as const, { page: 'reopenHow', bend: 1 } as const],
	...[{ page: 'detail', of: 'mark' } as const, { page: 'scrap', why: 'kinked' } as const],
	...[{ page: 'released', loaded: 51.5 } as const, { page: 'least', greatest: 1.76 } as const],
];
const state = (output: Output) => opened(new FakeLive([output], [], undefined, KEPT), USUAL_DISPLAY);

describe('keys mean one thing on all pages', () => {
	const pages = [
		...ASKED.map((ask) => ['ask' in ask ? ask.ask : '', state(ask)] as const),
		...BESIDE.map((page) => [page.page, { ...state(asks.PULL), page }] as const),
	];
	test.each(pages)('of a session: %s', (name, session) => {
		const { prompt } = viewOf(session);
		// Back from the menu is its own key once more.
		if (prompt.star !== undefined) expect(prompt.star.label).toBe(name === 'more' ? 'back' : 'more');
		if (prompt.slash !== undefined) expect(prompt.slash.label).toBe('take back');
		if (prompt.slash === undefined && prompt.back !== undefined) expect(prompt.back.label).toBe('back');
		expect(prompt.plus?.label ?? '').not.toMatch(/^(help|more|back)$/);
		const help = shortcutsOf(session, prompt).filter(({ key }) => key === 'h');
		expect(help.map(({ label }) => label)).toEqual(name === 'help' ? [] : ['help']);
	});

	const HOME: HomePage[] = [
		...[{ page: 'home' } as const, { page: 'kept' } as const, { page: 'more', from: { page: 'home' } } as const],
		...ROWS.jobs.map(({ path }) => ({ page: 'job', path }) as const),
		{ page: 'offer', job: ROWS.jobs[0]! },
	];
	test.each(HOME)('outside of one: $page', (page) => {
		const home = homeState(new FakeHome(null, ROWS), page);
		const { prompt, shortcuts } = homeView(home);
		if (prompt.star !== undefined) expect(prompt.star.label).toBe('more');
		if (prompt.back !== undefined) expect(prompt.back.label).toBe('back');
		expect(shortcuts?.['?']).toMatchObject({ step: 'page', page: { page: 'help' } });
		// On the home page letters search.
		if (page.page !== 'home') expect(shortcuts?.h).toEqual(shortcuts?.['?']);
	});
});

describe('the arrow keys reach the readings', () => {
	test.each(ASKED.map((ask) => ['ask' in ask ? ask.ask : '', ask] as const))('from the question %s', async (_, ask) => {
		const { walked } = await import('../../src/screen/session/pages/walk.ts');
		expect(walked(state(ask), { key: 'up' })).toMatchObject({ page: 'walk', at: 0 });
	});
});
