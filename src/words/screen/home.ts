import type { Pieces } from '../../session/batch/pieces.ts';
import type { SessionSummary } from '../../session/report/views.ts';
import { pieceBrief } from '../batch.ts';
import { bentAsBrief } from '../bent-as.ts';
import { fitWords, markWords, STATUS_WORDS } from '../session-list.ts';

/** What the home page and the pages beside it say. */

/** A kept session as lists have it; `started`: as a person reads it. */
type ListedKept = Omit<SessionSummary, 'status'> & {
	status: SessionSummary['status'] | 'damaged';
	started: string;
	imported?: boolean;
};

export const HOME_PAGE = {
	title: 'Pullbook',
	label: 'Number of your choice, or letters of its name',
	allAgain: 'all again',
	whatItDoes: 'Guides you through bending a tube, pull by pull. Keeps every reading.',
	noJob: 'There is no job file here: write one on the screen (below), or put some into the folder.',
	samplesOnly:
		'This folder has no jobs yet. Try a sample, or write a job of your own (below): it goes into the folder jobs.',
	interrupted: 'Interrupted',
	jobs: 'Jobs',
	samples: 'Samples',
	lately: 'Lately',
} as const;

/** What stands under `BESIDES`, and on the page of more. */
export const HOME_MORE = {
	newJob: 'a new job',
	kept: (count: number): string => `look at a kept session (${count})`,
	benders: 'benders, dies and the test piece',
	leave: 'leave the program',
} as const;

/** What the field shows while a list is searched. */
export const searchLabel = (search: string, found: number): string => `Search: ${search}   ${found} found`;

export const SEARCH_KEYS = {
	begin: ['letters', 'search'],
	mend: ['Backspace', 'one letter less'],
} as const;

/** Every key of the pages outside of a session, then what to know: a small window drops the last. */
export const HOME_HELP = {
	title: 'Help',
	label: 'Number of your choice, or / to go back',
	keys: [
		'number Enter  takes a choice; so do Up or Down, then Enter',
		'Page Up, Page Down  ten choices on   Home, End  the ends',
		'+    as advised; on the list: the session left last',
		'/    back, or all again      Esc  clears, or back',
		'*    more: a new job, benders, kept sessions, help',
		'h ?  this help; where letters search, only ?; on the pad *',
		"p    on a job's page: print  Backspace  one letter less",
		'Ctrl-C  leaves at once       Ctrl-Z  pauses, fg goes on',
	],
	said: [
		'Every answer in a session is on disk before the next question.',
		'Without a screen: pullbook bend JOB --lines. pullbook help line-mode tells how.',
	],
} as const;

/** What is said of a page that is read as a whole, or of a file that was written. */
export const sessionTitle = (id: string): string => `Session ${id}`;
export const BENDERS_TITLE = 'Benders and dies';
export const toPrintWords = (file: string): string => `Written, to be printed: ${file}`;
export const savedJobWords = (path: string): string => `Saved: ${path}`;

const dayOf = (started: string): string => started.slice(0, 10);

const behind = (words: string | undefined): string => (words === undefined ? '' : `, ${words}`);

/** A session to go on with. `tube`: diameter and wall. */
export function goOnWith(session: ListedKept, tube: string | undefined): { label: string; brief: string } {
	const { job, bentAs, bendsDone, bends, started } = session;
	const words = `go on with ${job}${bentAsBrief(bentAs)}${pieceBrief(session)}: ${bendsDone} of ${bends} bends`;
	return {
		label: `${words} made, started ${started}${behind(tube)}`,
		brief: `${words}, ${dayOf(started)}${behind(tube)}`,
	};
}

/** A kept session to be looked at. */
export function keptWords(row: ListedKept): { label: string; brief: string } {
	const { job, status, started, bendsDone, bends } = row;
	const fit = fitWords(row);
	const how = `${job}${bentAsBrief(row.bentAs)}${pieceBrief(row)}: ${STATUS_WORDS[status]}${behind(fit || undefined)}${markWords(row)}`;
	return { label: `${started}  ${how}, ${bendsDone} of ${bends} bends`, brief: `${dayOf(started)} ${how}` };
}

/** How it stands with a job. `latest`: its newest session. `pieces`: where several are wanted. */
export interface JobStanding {
	latest?: ListedKept;
	pieces?: Pieces;
}

export function standingWords({ latest, pieces }: JobStanding): string {
	if (pieces === undefined) return newestWords(latest);
	const made = `${pieces.made} of ${pieces.wanted} made`;
	return latest?.status === 'open' ? `${made}, ${unfinishedWords(latest)}` : `${made}${bentAsBrief(latest?.bentAs)}`;
}

function unfinishedWords({ piece, bendsDone, bends }: ListedKept): string {
	return `${piece === undefined ? '' : `piece ${piece} `}${STATUS_WORDS.open} at bend ${Math.min(bendsDone + 1, bends)}`;
}

function newestWords(latest: ListedKept | undefined): string {
	if (latest === undefined) return 'never bent';
	const day = dayOf(latest.started);
	switch (latest.status) {
		case 'open':
			return unfinishedWords(latest);
		case 'done':
			return `finished ${day}`;
		case 'scrapped':
			return `scrapped ${day}`;
		case 'damaged':
			return `log of ${day} damaged`;
	}
}

/** A sound job in the list. `summary`: bends, tube and material; `bends`: how many; `tube`: diameter and wall. */
export function jobWords(job: JobStanding & { name: string; summary: string; bends?: string; tube?: string }): {
	label: string;
	brief: string;
} {
	const state = `${job.name}: ${standingWords(job)}`;
	const brief = [job.bends, job.tube].filter((words) => words !== undefined).join(', ');
	return { label: `${state} (${job.summary})`, brief: brief === '' ? state : `${state} (${brief})` };
}
