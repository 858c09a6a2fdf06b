import type { KeptBender } from '../settings/settings.ts';
import type { HomePort, JobRow, SessionRow } from './home-port.ts';
import type { HomeStep, HomeView } from './home-view.ts';
import type { Key } from './keys.ts';
import { line, wrapped } from './line.ts';
import type { JobForm } from './new-job/form.ts';
import { type Choice, type Entry, NOTHING } from './prompt.ts';
import type { Message } from './session-state.ts';
import type { BenchPage } from './workshop/bench-page.ts';

/** Which page is open outside of a session. Pages that are loaded only when they are wanted bring what draws them. */
export type HomePage =
	| { page: 'home' }
	| { page: 'offer'; job: JobRow }
	| { page: 'kept' }
	| { page: 'change' }
	| { page: 'changeHow'; job: JobRow }
	| { page: 'help' }
	| { page: 'form'; form: JobForm; view: (form: JobForm, entry: Entry) => HomeView }
	| {
			page: 'bench';
			at: BenchPage;
			benders: readonly KeptBender[];
			view: (at: BenchPage, benders: readonly KeptBender[]) => HomeView;
	  };

export interface HomeState {
	jobs: readonly JobRow[];
	sessions: readonly SessionRow[];
	page: HomePage;
	entry: Entry;
	/** Letters by which the list of the home page is cut down. */
	search: string;
	/** What stands in the text field of a page that has one. */
	text: string;
	message: Message | null;
}

export function homeState(
	port: HomePort,
	page: HomePage = { page: 'home' },
	message: Message | null = null,
): HomeState {
	const [rows, sessions, notice] = [port.jobs(), port.sessions(), port.notice?.() ?? null];
	const said: Message | null = message ?? (notice === null ? null : { kind: 'said', text: notice });
	return { jobs: rows, sessions, page, entry: NOTHING, search: '', text: '', message: said };
}

/** The state with another page open, without looking at the disk again. */
export function turned(state: HomeState, page: HomePage, message: Message | null = null): HomeState {
	return { ...state, page, entry: NOTHING, search: '', text: '', message };
}

/** The state after a key that searches the home page's list; null: it is no such key. Digits pick, so they never search. */
export function searched(state: HomeState, key: Key): HomeState | null {
	const { page, search, entry } = state;
	if (page.page !== 'home') return null;
	const first = { field: '', selected: 0 };
	if (key.key === 'character' && (/\p{L}/u.test(key.text) || (search !== '' && /[\s.'-]/.test(key.text)))) {
		return { ...state, search: search + key.text, entry: first, message: null };
	}
	if (search === '' || entry.field !== '') return null;
	if (key.key === 'escape' || (key.key === 'character' && key.text === '/'))
		return { ...state, search: '', entry: NOTHING };
	if (key.key !== 'backspace') return null;
	const shorter = search.slice(0, -1);
	return { ...state, search: shorter, entry: shorter === '' ? NOTHING : first };
}

const TO_HOME = { label: 'back', step: { step: 'page', page: { page: 'home' } } } as const;
const CHOOSE = 'Write the number of a choice and press Enter; / goes back.';

export function homeView(state: HomeState): HomeView {
	const { page } = state;
	switch (page.page) {
		case 'home':
			return mainPage(state);
		case 'offer':
			return offerPage(page.job);
		case 'kept':
			return keptPage(state);
		case 'change':
			return changePage(state);
		case 'changeHow':
			return changeHowPage(page.job);
		case 'help':
			return helpPage();
		case 'form':
			return page.view(page.form, state.entry);
		case 'bench':
			return page.view(page.at, page.benders);
	}
}

function mainPage(state: HomeState): HomeView {
	const { search } = state;
	const open = interrupted(state);
	const all = [...open, ...jobs(state), ...recent(state), ...rest(state)];
	const found = search === '' ? all : all.filter(({ label }) => matches(label, search));
	const newest = open[0];
	const label =
		search === '' ? 'Number of your choice, or letters of its name' : `Search: ${search}   ${found.length} found`;
	return {
		title: 'Pullbook',
		prompt: {
			label,
			choices: found,
			...(newest === undefined ? {} : { plus: { label: 'go on', step: newest.step } }),
			star: { label: 'new job', step: { step: 'form', path: null, copy: false } },
			...(search === '' ? {} : { back: { label: 'all again', step: { step: 'page', page: { page: 'home' } } } }),
			empty: 'Write the number of a choice and press Enter.',
		},
		keys: search === '' ? [['letters', 'search']] : [['Backspace', 'one letter less']],
		body: (room) => [
			{
				rank: 1,
				lines:
					search === ''
						? wrapped('Guides the bending of a tube, pull by pull, and keeps every reading.', room.columns, 'quiet')
						: [],
			},
			{
				rank: 0,
				lines:
					state.jobs.length === 0
						? wrapped(
								'There is no job file here: * writes one on the screen, or put some into the folder.',
								room.columns,
								'alert',
							)
						: [],
			},
		],
	};
}

/** Whether every word searched for begins a word of the label or stands in it. */
function matches(label: string, search: string): boolean {
	const text = label.toLowerCase();
	return search
		.toLowerCase()
		.split(/\s+/)
		.every((word) => text.includes(word));
}

function interrupted({ sessions }: HomeState): Choice<HomeStep>[] {
	return sessions
		.filter(({ status }) => status === 'open')
		.map((row, at) => ({
			group: 'Interrupted',
			...(at === 0 ? { advised: true } : {}),
			label: `go on with ${row.job}: ${row.bendsDone} of ${row.bends} bends made, started ${row.started}`,
			step: { step: 'open', target: row.id, resume: true },
		}));
}

function jobs({ jobs: rows }: HomeState): Choice<HomeStep>[] {
	return rows.map((job) => ({
		group: 'Jobs',
		label:
			job.fault === undefined
				? `${job.name}: ${stateOf(job)} (${job.summary})`
				: `${job.name}: not usable, ${job.fault}`,
		step:
			job.open === undefined
				? { step: 'open', target: job.path, resume: false }
				: { step: 'page', page: { page: 'offer', job } },
	}));
}

/** How it stands with a job, from its newest session. */
function stateOf({ latest }: JobRow): string {
	if (latest === undefined) return 'never bent';
	const day = latest.started.slice(0, 10);
	switch (latest.status) {
		case 'open':
			return `open at bend ${Math.min(latest.bendsDone + 1, latest.bends)}`;
		case 'done':
			return `finished ${day}`;
		case 'scrapped':
			return `scrapped ${day}`;
		case 'damaged':
			return `log of ${day} damaged`;
	}
}

/** So many of the logs stand on the home page itself. */
const RECENT = 3;

function recent({ sessions }: HomeState): Choice<HomeStep>[] {
	return sessions
		.filter(({ status }) => status !== 'open')
		.slice(0, RECENT)
		.map((row) => ({ group: 'Lately', label: keptLabel(row), step: { step: 'review', id: row.id } }));
}

function rest({ sessions, jobs: rows }: HomeState): Choice<HomeStep>[] {
	const page = (label: string, to: HomePage): Choice<HomeStep> => ({
		group: 'Besides',
		label,
		step: { step: 'page', page: to },
	});
	const bench: HomeStep = { step: 'bench', at: { bench: 'list' } };
	return [
		{ group: 'Besides', label: 'a new job', step: { step: 'form', path: null, copy: false } },
		...(rows.length > 0 ? [page('change or copy a job', { page: 'change' })] : []),
		...(sessions.length > 0 ? [page(`look at a kept session (${sessions.length})`, { page: 'kept' })] : []),
		{ group: 'Besides', label: 'benders, dies and the test piece', step: bench },
		page('help', { page: 'help' }),
		{ group: 'Besides', label: 'leave the program', step: { step: 'leave' } },
	];
}

/** The job was interrupted before: go on, or begin another tube? */
function offerPage(job: JobRow): HomeView {
	const open: HomeStep = { step: 'open', target: job.open ?? job.path, resume: true };
	return {
		title: job.name,
		prompt: {
			label: 'Number of your choice',
			choices: [
				{ label: 'go on where it was left', step: open, advised: true },
				{ label: 'begin another tube', step: { step: 'open', target: job.path, resume: false } },
			],
			plus: { label: 'go on', step: open },
			back: TO_HOME,
			empty: 'Press + to go on where it was left, or write the number of a choice and press Enter.',
		},
		body: () => [{ rank: 0, lines: [line('A session of this job was interrupted. Nothing of it is lost.')] }],
	};
}

/** Which job is to be changed or copied. One with faults is mended in an editor. */
function changePage({ jobs: rows }: HomeState): HomeView {
	const usable = rows.filter(({ fault }) => fault === undefined);
	return {
		title: 'Change or copy a job',
		prompt: {
			label: 'Number of your choice',
			choices: usable.map((job) => ({
				label: `${job.name} (${job.summary})`,
				step: { step: 'page', page: { page: 'changeHow', job } },
			})),
			back: TO_HOME,
			empty: CHOOSE,
		},
		body: (room) => [
			{
				rank: 0,
				lines:
					usable.length < rows.length
						? wrapped(
								'A file with faults is not in the list: mend it in an editor; pullbook check says how.',
								room.columns,
								'quiet',
							)
						: [],
			},
		],
	};
}

function changeHowPage({ name, path }: JobRow): HomeView {
	return {
		title: name,
		prompt: {
			label: 'Number of your choice',
			choices: [
				{ label: 'change it', step: { step: 'form', path, copy: false } },
				{ label: 'copy it to a new job', step: { step: 'form', path, copy: true } },
			],
			back: { label: 'back', step: { step: 'page', page: { page: 'change' } } },
			empty: CHOOSE,
		},
		body: (room) => [{ rank: 0, lines: wrapped(path, room.columns, 'quiet') }],
	};
}

function keptPage({ sessions }: HomeState): HomeView {
	return {
		title: 'Kept sessions',
		prompt: {
			label: 'Number of your choice',
			choices: sessions.map((row) => ({ label: keptLabel(row), step: { step: 'review', id: row.id } })),
			back: TO_HOME,
			empty: CHOOSE,
		},
		body: () => [],
	};
}

const HELP = [
	'Pick with a number and Enter, or with the arrow keys and Enter. The numeric pad is enough.',
	'Letters search the list as they are typed; Backspace takes one off, / shows all again.',
	'+ goes on with the session that was interrupted last, at the very question that was open.',
	'* writes a new job, one question at a time, while the drawing and the marks grow.',
	'Every answer in a session is on the disk before the next question. Ctrl-C leaves at once, Ctrl-Z pauses: nothing is lost.',
	'Without colours: NO_COLOR=1 or --no-color. For a screen reader: pullbook bend JOB --lines.',
] as const;

function helpPage(): HomeView {
	return {
		title: 'Help',
		prompt: { label: '', back: TO_HOME, empty: 'Press / to go back.' },
		body: ({ columns }) => HELP.map((text) => ({ rank: 0, lines: wrapped(text, columns, 'plain', 2) })),
	};
}

const STATUS = { open: 'interrupted', done: 'done', scrapped: 'scrapped', damaged: 'log damaged' } as const;

function keptLabel({ job, status, started, bendsDone, bends, fits }: SessionRow): string {
	const fit = fits === null ? '' : fits ? ', fits' : ', does not fit';
	return `${started}  ${job}: ${STATUS[status]}${fit}, ${bendsDone} of ${bends} bends`;
}
