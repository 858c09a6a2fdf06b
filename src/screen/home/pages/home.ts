import { searchedWords } from '../../../review/session-table.ts';
import { goOnWith, HOME_MORE, HOME_PAGE, jobWords, searchLabel } from '../../../words/screen/home.ts';
import { faultyWords } from '../../../words/screen/job.ts';
import {
	BESIDES,
	CHOICE,
	CHOOSE,
	CHOOSE_OR_BACK,
	KEY_SAYS,
	MORE_TITLE,
	NONE_FOUND,
} from '../../../words/screen/usual.ts';
import type { Choice } from '../../shell/prompt.ts';
import { wrapped } from '../../text/line.ts';
import type { JobRow, SessionRow } from '../home-port.ts';
import type { HomeState } from '../home-state.ts';
import type { HomePage, HomeStep, HomeView } from '../home-view.ts';
import { keptChoice } from './kept.ts';
import { helpFrom, helpKeys, moreFrom, searchKeys, TO_HOME } from './usual.ts';

/** What there is to do: the interrupted sessions first, then the jobs, the last logs, and the rest. */
export function homePage(state: HomeState): HomeView {
	const { search } = state;
	const open = interruptedChoices(state);
	const all = [...open, ...jobs(state), ...recent(state), ...rest(state)];
	const found = search === '' ? all : all.filter(({ label }) => matches(label, search));
	// What the search leaves out is not gone on with.
	const newest = found.find((choice) => choice === open[0]);
	return {
		title: HOME_PAGE.title,
		prompt: {
			label: search === '' ? HOME_PAGE.label : searchLabel(search, found.length),
			choices: found,
			...(newest === undefined ? {} : { plus: { label: KEY_SAYS.goOn, step: newest.step } }),
			star: moreFrom({ page: 'home' }),
			...(search === '' ? {} : { back: { label: HOME_PAGE.allAgain, step: { step: 'page', page: { page: 'home' } } } }),
			empty: found.length === 0 ? NONE_FOUND : CHOOSE,
		},
		keys: searchKeys(search),
		shortcuts: { '?': helpFrom({ page: 'home' }).step },
		body: ({ columns }) => [
			{ rank: 1, extra: true, lines: search === '' ? wrapped(HOME_PAGE.whatItDoes, columns, 'quiet') : [] },
			{ rank: 0, lines: state.jobs.length === 0 ? wrapped(HOME_PAGE.noJob, columns, 'alert') : [] },
			{
				rank: 0,
				lines: state.jobs.some(({ sample }) => sample) ? wrapped(HOME_PAGE.samplesOnly, columns, 'alert') : [],
			},
		],
	};
}

/** Whether every word searched for stands in the label. */
function matches(label: string, search: string): boolean {
	const text = label.toLowerCase();
	return searchedWords(search).every((word) => text.includes(word));
}

function interruptedChoices({ sessions, jobs: rows }: HomeState): Choice<HomeStep>[] {
	const tubeOf = (session: SessionRow) => {
		const isIts = ({ open, latest }: JobRow) =>
			open === session.id || (session.path !== undefined && latest?.path === session.path);
		return rows.find(isIts)?.tube;
	};
	const open = sessions.filter(({ status }) => status === 'open');
	return open.map((session, at) => ({
		group: HOME_PAGE.interrupted,
		...(at === 0 ? { advised: true } : {}),
		...goOnWith(session, tubeOf(session)),
		step: { step: 'open', target: session.id, resume: true },
	}));
}

function jobs({ jobs: rows }: HomeState): Choice<HomeStep>[] {
	return rows.map((job) => {
		const { path, name, faults, sample } = job;
		return {
			group: sample ? HOME_PAGE.samples : HOME_PAGE.jobs,
			...(faults === undefined ? jobWords(job) : faultyWords(name, faults)),
			step: { step: 'page', page: { page: 'job', path } },
		};
	});
}

/** So many of the logs stand on the home page itself. */
const RECENT = 3;

function recent({ sessions }: HomeState): Choice<HomeStep>[] {
	const newest: SessionRow[] = [];
	for (const row of sessions) {
		if (newest.length === RECENT) break;
		if (row.status !== 'open') newest.push(row);
	}
	return newest.map((row) => ({ group: HOME_PAGE.lately, ...keptChoice(row) }));
}

/** What there is besides the page that it was opened from. */
export function homeMorePage(state: HomeState, from: HomePage): HomeView {
	return {
		title: MORE_TITLE,
		prompt: {
			label: CHOICE,
			choices: rest(state).map(({ group: _, ...choice }) => choice),
			back: from.page === 'home' ? TO_HOME : { label: KEY_SAYS.back, step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		...helpKeys(from),
		body: () => [],
	};
}

function rest({ sessions }: HomeState): Choice<HomeStep>[] {
	const review: HomeStep = { step: 'reviewed', at: { review: 'list', by: {}, sort: 'newest', search: '' } };
	const bench: HomeStep = { step: 'bench', at: { bench: 'list' } };
	return [
		{ group: BESIDES, label: HOME_MORE.newJob, step: { step: 'form', path: null, copy: false } },
		...(sessions.length > 0 ? [{ group: BESIDES, label: HOME_MORE.kept(sessions.length), step: review }] : []),
		{ group: BESIDES, label: HOME_MORE.benders, step: bench },
		{ group: BESIDES, ...helpFrom({ page: 'home' }) },
		{ group: BESIDES, label: HOME_MORE.leave, step: { step: 'leave' } },
	];
}
