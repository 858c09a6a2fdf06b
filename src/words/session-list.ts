import type { KeptRow } from '../journal/kept-row.ts';
import { bentAsBrief } from './bent-as.ts';
import { foreign, foreignName } from './foreign.ts';

/** The sessions as a table of text, newest first. */
export function listText(sessions: readonly KeptRow[]): string {
	if (sessions.length === 0) return 'No session has been kept yet. Start one: pullbook bend JOB';
	return sessions.map(lineOf).join('\n');
}

function lineOf({ id: log, summary, problem }: KeptRow): string {
	if (summary === null) return `${foreignName(log)}  ${foreign(problem ?? '')}`;
	const { id, job, status, bendsDone, bends, fits, mayFit, bentAs } = summary;
	// Nobody asks whether what was given up fits.
	const outcome =
		fits === null || status === 'scrapped' ? '' : fits ? ', fits' : mayFit ? ', may fit' : ', does not fit';
	return `${foreignName(id)}  ${status.padEnd(8)}  ${bendsDone} of ${bends} bends${outcome}  ${foreignName(job)}${bentAsBrief(bentAs)}`;
}
