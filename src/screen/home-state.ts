import type { HomePort, JobRow, SessionRow } from './home-port.ts';
import { line, wrapped } from './line.ts';
import type { PageView } from './pages/page.ts';
import { type Choice, type Entry, NOTHING, type Prompt } from './prompt.ts';
import type { Message } from './session-state.ts';

export type HomePage = { page: 'home' } | { page: 'offer'; job: JobRow } | { page: 'kept' };

export type HomeStep =
	| { step: 'page'; page: HomePage }
	| { step: 'open'; target: string; resume: boolean }
	| { step: 'review'; id: string }
	| { step: 'benders' }
	| { step: 'leave' };

export interface HomeState {
	jobs: readonly JobRow[];
	sessions: readonly SessionRow[];
	page: HomePage;
	entry: Entry;
	message: Message | null;
}

export function homeState(
	port: HomePort,
	page: HomePage = { page: 'home' },
	message: Message | null = null,
): HomeState {
	return { jobs: port.jobs(), sessions: port.sessions(), page, entry: NOTHING, message };
}

export interface HomeView {
	title: string;
	prompt: Prompt<HomeStep>;
	body: PageView['body'];
}

const TO_HOME = { label: 'back', step: { step: 'page', page: { page: 'home' } } } as const;

export function homeView(state: HomeState): HomeView {
	switch (state.page.page) {
		case 'home':
			return mainPage(state);
		case 'offer':
			return offerPage(state.page.job);
		case 'kept':
			return keptPage(state);
	}
}

function mainPage(state: HomeState): HomeView {
	const none = state.jobs.length === 0;
	return {
		title: 'Pullbook',
		prompt: {
			label: 'Number of your choice',
			choices: [...interrupted(state), ...jobs(state), ...rest(state)],
			empty: 'Write the number of a choice and press Enter.',
		},
		body: (room) => [
			{
				rank: 1,
				lines: wrapped('Guides the bending of a tube, pull by pull, and keeps every reading.', room.columns, 'quiet'),
			},
			{
				rank: 0,
				lines: none
					? wrapped(
							'There is no job file here. Put some into the jobs folder, or name one: pullbook bend JOB.',
							room.columns,
							'alert',
						)
					: [],
			},
		],
	};
}

function interrupted({ sessions }: HomeState): Choice<HomeStep>[] {
	return sessions
		.filter(({ status }) => status === 'open')
		.map((row) => ({
			group: 'Interrupted',
			label: `go on with ${row.job}: ${row.bendsDone} of ${row.bends} bends made, started ${row.started}`,
			step: { step: 'open', target: row.id, resume: true },
		}));
}

function jobs({ jobs: rows }: HomeState): Choice<HomeStep>[] {
	return rows.map((job) => ({
		group: 'Jobs',
		label: job.fault === undefined ? `${job.name} (${job.summary})` : `${job.name}: not usable, ${job.fault}`,
		step:
			job.open === undefined
				? { step: 'open', target: job.path, resume: false }
				: { step: 'page', page: { page: 'offer', job } },
	}));
}

function rest({ sessions }: HomeState): Choice<HomeStep>[] {
	const kept: Choice<HomeStep> = {
		group: 'Besides',
		label: `look at a kept session (${sessions.length})`,
		step: { step: 'page', page: { page: 'kept' } },
	};
	return [
		...(sessions.length > 0 ? [kept] : []),
		{ group: 'Besides', label: 'benders and dies', step: { step: 'benders' } },
		{ group: 'Besides', label: 'leave the program', step: { step: 'leave' } },
	];
}

/** The job was interrupted before: go on, or begin another tube? */
function offerPage(job: JobRow): HomeView {
	return {
		title: job.name,
		prompt: {
			label: 'Number of your choice',
			choices: [
				{
					label: 'go on where it was left',
					step: { step: 'open', target: job.open ?? job.path, resume: true },
					advised: true,
				},
				{ label: 'begin another tube', step: { step: 'open', target: job.path, resume: false } },
			],
			plus: { label: 'go on', step: { step: 'open', target: job.open ?? job.path, resume: true } },
			back: TO_HOME,
			empty: 'Press + to go on where it was left, or write the number of a choice and press Enter.',
		},
		body: () => [{ rank: 0, lines: [line('A session of this job was interrupted. Nothing of it is lost.')] }],
	};
}

function keptPage({ sessions }: HomeState): HomeView {
	return {
		title: 'Kept sessions',
		prompt: {
			label: 'Number of your choice',
			choices: sessions.map((row) => ({ label: keptLabel(row), step: { step: 'review', id: row.id } })),
			back: TO_HOME,
			empty: 'Write the number of a choice and press Enter; / goes back.',
		},
		body: () => [],
	};
}

const STATUS = { open: 'interrupted', done: 'done', scrapped: 'scrapped', damaged: 'log damaged' } as const;

function keptLabel({ job, status, started, bendsDone, bends, fits }: SessionRow): string {
	const fit = fits === null ? '' : fits ? ', fits' : ', does not fit';
	return `${started}  ${job}: ${STATUS[status]}${fit}, ${bendsDone} of ${bends} bends`;
}
