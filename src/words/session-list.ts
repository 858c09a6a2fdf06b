import type { Imported } from '../journal/import-mark.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import type { Listed } from '../review/table.ts';
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
	return sessions.map(lineOf).join('\n');
}

function lineOf({ id: log, summary, problem, isImported }: KeptRow): string {
	if (summary === null) return `${foreignName(log)}  ${problem === null ? '' : journalWords(problem)}`;
	const { id, job, status, bendsDone, bends, bentAs } = summary;
	const fit = fitWords(summary);
	const outcome = fit === '' ? '' : `, ${fit}`;
	return `${foreignName(id)}  ${status.padEnd(8)}  ${bendsDone} of ${bends} bends${outcome}  ${foreignName(job)}${bentAsBrief(bentAs)}${pieceBrief(summary)}${summary.simulated ? '  (simulated)' : ''}${isImported ? '  (imported)' : ''}`;
}

export const STATUS_WORDS = {
	open: 'interrupted',
	done: 'done',
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
}: Pick<Listed, 'status' | 'fits'> & Pick<SessionSummary, 'mayFit'>): string {
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

/** What is searched of a session: names, id, and what a list says became of it, in small letters. */
export function searchedText(
	row: Listed & Pick<SessionSummary, 'mayFit' | 'simulated'> & { imported?: boolean },
): string {
	const { id, job, bender, die, heat, status } = row;
	const names = `${job}\n${bender ?? ''}\n${die ?? ''}\n${heat ?? ''}\n${id}`;
	return `${names}\n${status} ${STATUS_WORDS[status]} ${fitWords(row)}${markWords(row)}`.toLowerCase();
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
