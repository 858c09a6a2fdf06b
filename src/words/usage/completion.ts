import { foreignName } from '../foreign.ts';

/** What stands behind a word that a shell offers. */
export const CANDIDATE = {
	bender: 'bender',
	die: 'die',
	folder: 'folder',
	session: 'session',
	noJob: 'no job',
	job: (name: string, summary: string): string => `${foreignName(name)}: ${summary}`,
	/** `job`: null where the log does not tell; `begun`: to the minute. */
	kept: (job: string | null, status: string, begun: string): string =>
		`${job === null ? '' : `${foreignName(job)}, `}${status}, ${begun}`,
} as const;
