import { describe, expect, test } from 'vitest';
import type { Draft } from '../../src/job/draft/draft.ts';
import { QUESTIONS } from '../../src/job/draft/questions.ts';
import type { BenchPage } from '../../src/screen/benders/bench-page.ts';
import { benchView } from '../../src/screen/benders/bench-view.ts';
import { homeState } from '../../src/screen/home/home-state.ts';
import type { HomePage } from '../../src/screen/home/home-view.ts';
import { homeView } from '../../src/screen/home/pages/index.ts';
import { type Aside, backInForm, type JobForm, newForm } from '../../src/screen/job-form/job-form.ts';
import { formView } from '../../src/screen/job-form/view.ts';
import { reviewView } from '../../src/screen/review/index.ts';
import { LIST, type ReviewPage } from '../../src/screen/review/review-page.ts';
import { openedOnScreen } from '../../src/screen/session/opened-on-screen.ts';
import { viewOf } from '../../src/screen/session/pages/index.ts';
import type { Page } from '../../src/screen/session/session-state.ts';
import { shortcutOf, shortcutsOf } from '../../src/screen/session/shortcuts.ts';
import { USUAL_DISPLAY } from '../../src/screen/shell/display.ts';
import { NOTHING, type Prompt, pressed } from '../../src/screen/shell/prompt.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import type { KeptBender } from '../../src/settings/settings.ts';
import { HOME_HELP } from '../../src/words/screen/home.ts';
import * as asks from '../helpers/screen/asks.ts';
import { FakeHome, FakeLive, KEPT, ROWS } from '../helpers/screen/fake-ports.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';

/** Every question, and (the compiler asks for each) every page that can be opened beside one. */
const ASKED: Output[] = [
	...[asks.SET, asks.SET_AGAIN, asks.PULL, asks.MEASURE, asks.CONFIRM, asks.CHECK, asks.CHECK_OVALITY],
	...[asks.DECIDE, asks.RELIEVE, asks.REOPEN],
];
const BENDERS: readonly KeptBender[] = [
	{ name: 'big', machine: null, dies: [{ name: '6 in', units: 'in', fields: { clr: 6 } }] },
];
const SIX = { bender: 'big', die: '6 in' };
const BENCH: Readonly<Record<BenchPage['bench'], BenchPage>> = {
	list: { bench: 'list' },
	bender: { bench: 'bender', bender: 'big' },
	die: { bench: 'die', ...SIX },
	field: { bench: 'field', ...SIX, field: 'clr' },
	newBender: { bench: 'newBender' },
	newDie: { bench: 'newDie', bender: 'big' },
	units: { bench: 'units', ...SIX },
	radius: { bench: 'radius', ...SIX, units: 'in' },
	forget: { bench: 'forget', ...SIX },
	piece: { bench: 'piece', piece: { ...SIX, units: 'in', clr: 6, stretch: 0, given: [] } },
	more: { bench: 'more', from: { bench: 'list' } },
	help: { bench: 'help', from: { bench: 'list' } },
};
const BEND = { straight: 9, angle: 30, rotation: 0 };
const ASIDES: Readonly<Record<Aside['aside'], Aside>> = {
	bend: { aside: 'bend', item: 0 },
	point: { aside: 'point', item: 0 },
	check: { aside: 'check', item: 0 },
	tube: { aside: 'tube' },
	shape: { aside: 'shape' },
	fields: { aside: 'fields' },
	checks: { aside: 'checks' },
	taken: { aside: 'taken', path: 'a.json' },
	named: { aside: 'named' },
	leave: { aside: 'leave' },
	more: { aside: 'more' },
	help: { aside: 'help', from: null },
};
const REVIEW: Readonly<Record<ReviewPage['review'], ReviewPage>> = {
	list: LIST,
	narrow: { review: 'narrow', by: null, list: LIST },
	story: { review: 'story' },
	bend: { review: 'bend', bend: 1, top: 0 },
	corrections: { review: 'corrections', top: 0 },
	checks: { review: 'checks', top: 0 },
	taught: { review: 'taught', top: 0 },
	tube: { review: 'tube', across: 0, over: 0, enlarged: false },
	line: { review: 'line', at: 0 },
	plot: { review: 'plot', plot: 'landed' },
	more: { review: 'more', from: { review: 'story' } },
	help: { review: 'help', from: LIST },
};
const [reading] = KEPT[1]!.readings;
const ask: Page = { page: 'ask' };
const START: Page = { page: 'start', note: asks.SESSION, cautions: true, warnings: asks.WARNINGS, layout: true };
const BESIDE: Readonly<Record<Exclude<Page['page'], 'ask'>, Page>> = {
	start: START,
	atStart: { page: 'atStart', from: START },
	layout: { page: 'layout' },
	changeDie: { page: 'changeDie', change: asks.CHANGE_DIE },
	corrected: { page: 'corrected', note: asks.CORRECTED },
	done: { page: 'done', note: asks.DONE },
	cuts: { page: 'cuts', note: asks.DONE },
	batch: { page: 'batch', note: asks.DONE },
	released: { page: 'released', loaded: 51.5 },
	least: { page: 'least', greatest: 1.76 },
	more: { page: 'more' },
	help: { page: 'help', from: ask },
	shown: { page: 'shown', from: ask },
	topics: { page: 'topics', from: ask },
	undo: { page: 'undo' },
	detail: { page: 'detail', of: 'mark' },
	amend: { page: 'amend' },
	amendWhich: { page: 'amendWhich', entry: KEPT[1]! },
	amendValue: { page: 'amendValue', entry: KEPT[1]!, reading: reading! },
	amendSure: { page: 'amendSure', amending: { entry: KEPT[1]!, reading: reading!, value: 50, would: null } },
	walk: { page: 'walk', at: 0, from: ask },
	evidence: { page: 'evidence' },
	evidenceBend: { page: 'evidenceBend', kind: 'leg' },
	evidenceValue: { page: 'evidenceValue', kind: 'leg', bend: 1 },
	measureAgain: { page: 'measureAgain' },
	again: { page: 'again', of: { kind: 'angle', bend: 1 } },
	whatIf: { page: 'whatIf' },
	why: { page: 'why' },
	reopen: { page: 'reopen' },
	reopenHow: { page: 'reopenHow', bend: 1 },
	relief: { page: 'relief', bend: 2, answer: { action: { do: 'relieve' } } },
	scrap: { page: 'scrap', why: 'kinked' },
	text: { page: 'text', purpose: 'note', value: '' },
};
/** Before the first question: it is there that help is. */
const NO_STAR = new Set(['layout']);

/** A digit begins the number of a choice or a reading, and means nothing where there is neither. */
function digitsDo<S>(prompt: Prompt<S>): void {
	if (prompt.text !== undefined) return;
	expect(prompt.empty).not.toBe('');
	expect(prompt.read !== undefined && prompt.choices !== undefined).toBe(false);
	const typed = pressed(prompt, NOTHING, { key: 'character', text: '1' });
	const taken = prompt.read !== undefined || prompt.choices !== undefined;
	expect(typed).toMatchObject({ entry: { field: taken ? '1' : '' } });
	const first = prompt.choices?.at(0);
	if (first !== undefined && 'entry' in typed)
		expect(pressed(prompt, typed.entry, { key: 'return' })).toEqual({ step: first.step });
}

const state = (output: Output) => openedOnScreen(new FakeLive([output], [], undefined, KEPT), USUAL_DISPLAY);

describe('keys mean one thing on all pages', () => {
	const pages = [
		...ASKED.map((ask) => ['ask' in ask ? ask.ask : '', state(ask)] as const),
		...Object.entries(BESIDE).map(([name, page]) => [name, { ...state(asks.PULL), page }] as const),
	];
	test.each(pages)('of a session: %s', (name, session) => {
		const { prompt } = viewOf(session);
		// Back from the menu is its own key once more.
		if (prompt.star !== undefined) expect(prompt.star.label).toBe(name === 'more' ? 'back' : 'more');
		// A pad has no letters: wherever nothing leads back to where help is, `*` does.
		if (prompt.back === undefined && !NO_STAR.has(name)) expect(prompt.star).toBeDefined();
		if (prompt.slash !== undefined) expect(prompt.slash.label).toBe('take back');
		if (prompt.slash === undefined && prompt.back !== undefined) expect(prompt.back.label).toBe('back');
		expect(prompt.plus?.label ?? '').not.toMatch(/^(help|more|back)$/);
		const help = shortcutsOf(session, prompt).filter(({ key }) => key === 'h');
		// In free text a letter is a letter, and so is `?`.
		const none = name === 'help' || prompt.text !== undefined;
		expect(help.map(({ label }) => label)).toEqual(none ? [] : ['help']);
		const keyed = (text: string) => shortcutOf(session, prompt, { key: 'character', text });
		expect(keyed('?')).toEqual(keyed('h'));
		digitsDo(prompt);
	});

	const HOME: HomePage[] = [
		...[{ page: 'home' } as const, { page: 'more', from: { page: 'home' } } as const],
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
		digitsDo(prompt);
	});

	test.each(HOME)('the help of home names every key of $page', (page) => {
		const { prompt, shortcuts = {}, keys = [] } = homeView(homeState(new FakeHome(null, ROWS), page));
		const told = HOME_HELP.keys.join('  ');
		const does = (text: string) =>
			Object.hasOwn(shortcuts, text) || 'step' in pressed(prompt, NOTHING, { key: 'character', text });
		const signs = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).filter(does);
		expect(signs).toEqual(expect.arrayContaining(page.page === 'home' ? ['?', '+', '*'] : ['?', 'h', '/']));
		for (const sign of signs) expect(` ${told} `).toContain(` ${sign} `);
		for (const name of ['Enter', 'Up', 'Down', 'Page Up', 'Page Down', 'Home', 'End', 'Esc', 'Backspace'])
			expect(told).toContain(name);
		for (const [key] of keys.filter(([name]) => name.length > 1)) expect(told).toContain(key);
	});

	test.each(Object.entries(BENCH))('at the benders: %s', (_, at) => {
		const { prompt, shortcuts } = benchView(at, BENDERS);
		if (prompt.star !== undefined) expect(prompt.star.label).toBe('more');
		if (prompt.back !== undefined) expect(prompt.back.label).toBe('back');
		if (at.bench !== 'help' && prompt.text === undefined) {
			expect(shortcuts?.h).toEqual({ step: 'bench', at: { bench: 'help', from: at } });
			// A pad has no letters: what else there is has help in it.
			if (at.bench !== 'more') expect(prompt.star?.step).toEqual({ step: 'bench', at: { bench: 'more', from: at } });
		}
		expect(shortcuts?.h).toEqual(shortcuts?.['?']);
		digitsDo(prompt);
	});

	test('help at the benders leads back to the page that asked for it', () => {
		const from = BENCH.field;
		expect(benchView({ bench: 'help', from }, BENDERS).prompt.back?.step).toEqual({ step: 'bench', at: from });
		expect(
			benchView({ bench: 'more', from }, BENDERS)
				.prompt.choices?.slice(0, 99)
				.map(({ step }) => step),
		).toContainEqual({
			step: 'bench',
			at: { bench: 'help', from: { bench: 'more', from } },
		});
	});

	const FORM = newForm({ lookup: () => undefined, dies: [] });
	const QUESTION = Object.keys(QUESTIONS) as (keyof typeof QUESTIONS)[];
	const asking: Partial<Draft> = {
		...{ field: 'risk', file: { pullbook: 'job/1', shape: { bends: [BEND], last: 9 }, checks: [{ name: 'a' }] } },
		part: { check: { kind: 'drop', values: [] }, die: 'tight', figure: 'clr' },
	};
	const formAt = (at: Draft['at']) => ({ ...FORM, drafts: [{ ...FORM.drafts[0]!, ...asking, at }] });
	const FORMS: [string, JobForm][] = [
		...([...QUESTION, 'overview'] as const).map((at): [string, JobForm] => [at, formAt(at)]),
		...Object.entries(ASIDES).map(([name, aside]): [string, JobForm] => [name, { ...formAt('overview'), aside }]),
	];
	test.each(FORMS)('of a job that is written: %s', (_, form) => {
		const { prompt, shortcuts } = formView(form, NOTHING);
		if (prompt.star !== undefined) expect(prompt.star.label).toBe('more');
		expect(prompt.back?.label).toBe(form.aside?.aside === 'leave' ? 'go on with it' : 'back');
		const none = form.aside?.aside === 'help' || prompt.text !== undefined;
		const help = { step: 'formAside', aside: { aside: 'help', from: form.aside } };
		expect([shortcuts?.h, shortcuts?.['?']]).toEqual(none ? [undefined, undefined] : [help, help]);
		digitsDo(prompt);
	});

	test('help at a job that is written leads back to the page that asked for it', () => {
		const help: JobForm = { ...formAt('overview'), aside: { aside: 'help', from: ASIDES.checks } };
		expect(backInForm(help)?.aside).toEqual(ASIDES.checks);
	});

	const session = keptSession();
	test.each(Object.entries(REVIEW))('of kept sessions: %s', (_, at) => {
		const kept = { sessions: ROWS.sessions, search: '' };
		const { prompt, shortcuts } = reviewView(kept, at, session, LIST);
		if (prompt.star !== undefined) expect(prompt.star.label).toBe('more');
		expect(prompt.back?.label).toBe('back');
		if (!['list', 'narrow', 'more', 'help'].includes(at.review)) expect(prompt.star).toBeDefined();
		if (at.review !== 'help') expect(shortcuts?.['?']).toEqual({ step: 'reviewed', at: { review: 'help', from: at } });
		// In the list letters search.
		if (at.review !== 'list') expect(shortcuts?.h).toEqual(shortcuts?.['?']);
		digitsDo(prompt);
	});
});

describe('the arrow keys reach the readings', () => {
	test.each(ASKED.map((ask) => ['ask' in ask ? ask.ask : '', ask] as const))('from the question %s', async (_, ask) => {
		const { walked } = await import('../../src/screen/session/pages/walk.ts');
		expect(walked(state(ask), { key: 'up' })).toMatchObject({ page: 'walk', at: 0 });
	});
});
