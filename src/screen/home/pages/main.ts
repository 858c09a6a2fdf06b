import { pieceBrief } from '../../../words/batch.ts';
import { bentAsBrief } from '../../../words/bent-as.ts';
import { countOf } from '../../../words/job/fault.ts';
import { CHOICE, CHOOSE, CHOOSE_OR_BACK, NONE_FOUND } from '../../../words/screen/usual.ts';
import type { Choice } from '../../shell/prompt.ts';
import { wrapped } from '../../text/line.ts';
import type { JobRow, SessionRow } from '../home-port.ts';
import type { HomeState } from '../home-state.ts';
import type { HomePage, HomeStep, HomeView } from '../home-view.ts';
import { dayOf, keptChoice } from './kept.ts';
import { helpFrom, helpKeys, moreFrom, searchKeys, TO_HOME } from './usual.ts';

/** What there is to do: the interrupted sessions first, then the jobs, the last logs, and the rest. */
export function mainPage(state: HomeState): HomeView {
	const { search } = state;
	const open = interrupted(state);
	const all = [...open, ...jobs(state), ...recent(state), ...rest(state)];
	const found = search === '' ? all : all.filter(({ label }) => matches(label, search));
	// What the search leaves out is not gone on with.
	const newest = found.find((choice) => choice === open[0]);
	const label =
		search === '' ? 'Number of your choice, or letters of its name' : `Search: ${search}   ${found.length} found`;
	return {
		title: 'Pullbook',
		prompt: {
			label,
			choices: found,
			...(newest === undefined ? {} : { plus: { label: 'go on', step: newest.step } }),
			star: moreFrom({ page: 'home' }),
			...(search === '' ? {} : { back: { label: 'all again', step: { step: 'page', page: { page: 'home' } } } }),
			empty: found.length === 0 ? NONE_FOUND : CHOOSE,
		},
		keys: searchKeys(search),
		shortcuts: { '?': helpFrom({ page: 'home' }).step },
		body: ({ columns }) => [
			{ rank: 1, extra: true, lines: search === '' ? wrapped(WHAT_IT_DOES, columns, 'quiet') : [] },
			{ rank: 0, lines: state.jobs.length === 0 ? wrapped(NO_JOB, columns, 'alert') : [] },
			{ rank: 0, lines: state.jobs.some(({ sample }) => sample) ? wrapped(SAMPLES, columns, 'alert') : [] },
		],
	};
}

const WHAT_IT_DOES = 'Guides you through bending a tube, pull by pull. Keeps every reading.';
const NO_JOB = 'There is no job file here: write one on the screen (below), or put some into the folder.';
const SAMPLES =
	'This folder has no jobs yet. Try a sample, or write a job of your own (below): it goes into the folder jobs.';

/** Whether every word searched for begins a word of the label or stands in it. */
function matches(label: string, search: string): boolean {
	const text = label.toLowerCase();
	return search
		.toLowerCase()
		.split(/\s+/)
		.every((word) => text.includes(word));
}

function interrupted({ sessions, jobs: rows }: HomeState): Choice<HomeStep>[] {
	const tubeOf = (session: SessionRow) => {
		const isIts = ({ open, latest }: JobRow) =>
			open === session.id || (session.path !== undefined && latest?.path === session.path);
		return inCommas(rows.find(isIts)?.tube);
	};
	return sessions
		.filter(({ status }) => status === 'open')
		.map((session, at) => {
			const { id, job, bentAs, bendsDone, bends, started } = session;
			const words = `go on with ${job}${bentAsBrief(bentAs)}${pieceBrief(session)}: ${bendsDone} of ${bends} bends`;
			return {
				group: 'Interrupted',
				...(at === 0 ? { advised: true } : {}),
				label: `${words} made, started ${started}${tubeOf(session)}`,
				brief: `${words}, ${dayOf(started)}${tubeOf(session)}`,
				step: { step: 'open', target: id, resume: true },
			};
		});
}

function jobs({ jobs: rows }: HomeState): Choice<HomeStep>[] {
	return rows.map((job) => {
		const { path, name, summary, tube, faults, sample } = job;
		const group = sample ? 'Samples' : 'Jobs';
		const step = { step: 'page', page: { page: 'job', path } } as const;
		if (faults !== undefined) {
			const brief = `${name}: not usable, ${countOf(faults)}`;
			return { group, label: `${brief}, the first at ${faults[0]?.at}`, brief, step };
		}
		const state = `${name}: ${stateOf(job)}`;
		return { group, label: `${state} (${summary})`, brief: `${state}${inCommas(tube)}`, step };
	});
}

const inCommas = (words: string | undefined): string => (words === undefined ? '' : `, ${words}`);

/** How it stands with a job, from its newest session. */
export function stateOf({ latest, pieces }: JobRow): string {
	if (pieces === undefined) return newestOf(latest);
	const made = `${pieces.made} of ${pieces.wanted} made`;
	return latest?.status === 'open' ? `${made}, ${openOf(latest)}` : `${made}${bentAsBrief(latest?.bentAs)}`;
}

function openOf({ piece, bendsDone, bends }: SessionRow): string {
	return `${piece === undefined ? '' : `piece ${piece} `}open at bend ${Math.min(bendsDone + 1, bends)}`;
}

function newestOf(latest: SessionRow | undefined): string {
	if (latest === undefined) return 'never bent';
	const day = dayOf(latest.started);
	switch (latest.status) {
		case 'open':
			return openOf(latest);
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
		.map((row) => ({ group: 'Lately', ...keptChoice(row) }));
}

/** What there is besides the page that it was opened from. */
export function homeMorePage(state: HomeState, from: HomePage): HomeView {
	return {
		title: 'More',
		prompt: {
			label: CHOICE,
			choices: rest(state).map(({ group: _, ...choice }) => choice),
			back: from.page === 'home' ? TO_HOME : { label: 'back', step: { step: 'page', page: from } },
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
		{ group: 'Besides', label: 'a new job', step: { step: 'form', path: null, copy: false } },
		...(sessions.length > 0
			? [{ group: 'Besides', label: `look at a kept session (${sessions.length})`, step: review }]
			: []),
		{ group: 'Besides', label: 'benders, dies and the test piece', step: bench },
		{ group: 'Besides', ...helpFrom({ page: 'home' }) },
		{ group: 'Besides', label: 'leave the program', step: { step: 'leave' } },
	];
}
