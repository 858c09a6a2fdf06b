import type { Imported } from '../journal/import-mark.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import type { TableSession } from '../review/session-table.ts';
import type { SessionSummary } from '../session/report/views.ts';
import { pieceBrief } from './batch.ts';
import { bentAsBrief } from './bent-as.ts';
import { foreign, foreignName } from './foreign.ts';
import { journalWords } from './journal.ts';
import { localMinute, type WallClock } from './local-time.ts';

export const NONE_KEPT = 'No session has been kept yet. Start one: pullbook bend JOB';

/** The sessions as a table of text, newest first. */
export function listText(sessions: readonly KeptRow[]): string {
	if (sessions.length === 0) return NONE_KEPT;
	return sessions.map(sessionLine).join('\n');
}

function sessionLine({ id, job, status, listed, problem, isImported }: KeptRow): string {
	if (listed === null || job === null) return `${foreignName(id)}  ${problem === null ? '' : journalWords(problem)}`;
	const { bendsDone, bends, fits, mayFit, bentAs, simulated } = listed;
	const fit = fitWords({ status, fits, mayFit });
	const outcome = fit === '' ? '' : `, ${fit}`;
	return `${foreignName(id)}  ${STATUS_WORDS[status].padEnd(11)}  ${bendsDone} of ${bends} bends${outcome}  ${foreignName(job.name)}${bentAsBrief(bentAs)}${pieceBrief(listed)}${simulated ? '  (simulated)' : ''}${isImported ? '  (imported)' : ''}`;
}

export const STATUS_WORDS = {
	open: 'interrupted',
	done: 'finished',
	scrapped: 'scrapped',
	damaged: 'log damaged',
} as const;

/** What is said of a session that no tube was bent in. */
export const SIMULATED = 'Practice: the bender and the readings were simulated. No tube was bent.';

/** What a list says of a finished tube; empty of another, since nobody asks whether what was given up fits. */
export function fitWords({
	status,
	fits,
	mayFit,
}: Pick<TableSession, 'status' | 'fits'> & Pick<SessionSummary, 'mayFit'>): string {
	if (status !== 'done' || fits === null) return '';
	return fits ? 'fits' : mayFit ? 'may fit' : 'does not fit';
}

/** Where and when a session was taken over from; a mark that was cut short does not say where. */
export function importedWords({ from, at }: Imported, clock: WallClock): string {
	return at === '' ? 'Imported' : `Imported from ${foreign(from)}, ${foreign(localMinute(at, clock))}`;
}

/** Behind a session in a list, what a list must not leave out: `, simulated`, `, imported`. */
export function markWords({ simulated, imported }: { simulated?: boolean; imported?: boolean }): string {
	return `${simulated ? ', simulated' : ''}${imported ? ', imported' : ''}`;
}

type Searched = TableSession & Pick<SessionSummary, 'mayFit' | 'simulated'> & { imported?: boolean };

/** What is searched of a session: names, id, and what a list says became of it, in small letters. */
export function searchedText(row: Searched): string {
	const { id, job, bender, die, heat } = row;
	return searchedIn([id, job, bender, die, heat, searchedOutcome(row)]);
}

/** Joined, which leaves far less behind than a template: there may be thousands. */
export const searchedIn = (parts: readonly (string | undefined)[]): string => parts.join('\n').toLowerCase();

export function searchedOutcome(row: Omit<Searched, 'id' | 'job' | 'started'>): string {
	const { status } = row;
	return `${status} ${STATUS_WORDS[status]} ${fitWords(row)}${markWords(row)}`;
}

/** As many as one looks through. */
const FEW = 20;

/** A beginning that several sessions share: which they are, and what to write. */
export function severalWords(beginning: string, ids: readonly string[]): string {
	const more = ids.length > FEW ? [`and ${ids.length - FEW} more`] : [];
	const list = [...ids.slice(0, FEW), ...more].join(', ');
	return `${ids.length} sessions begin with "${foreignName(beginning)}": ${list}. Write more of the one you mean.`;
}

/** What is offered is not the newest: that one is damaged. */
export function newerDamagedWords(id: string): string {
	return `The newest log, ${foreignName(id)}, is damaged, so this is an older session. pullbook log ${foreignName(id)} shows what is readable.`;
}
