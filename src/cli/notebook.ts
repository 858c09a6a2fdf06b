import { existsSync } from 'node:fs';
import { exportSessions, importSessions } from '../journal/exchange/exchange.ts';
import type { Exchanged, LeftOut } from '../journal/exchange/facts.ts';
import { verifySessions } from '../journal/exchange/verify.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import {
	type ExchangeWay,
	exchangedDocument,
	exchangedText,
	verifiedDocument,
	verifiedText,
} from '../words/notebook.ts';
import { LOG_USAGE } from '../words/usage/log.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson } from './io.ts';
import { progressOn, shownReading } from './reading-logs.ts';
import { UsageError } from './usage-error.ts';

interface NotebookRequest {
	home: string;
	json: boolean;
}

/** What may be done with all logs at once, by the word that stands where an id would. */
export const NOTEBOOK_WORDS = ['verify', 'export', 'import'] as const;
type NotebookWord = (typeof NOTEBOOK_WORDS)[number];

export const isNotebookWord = (word: string | null): word is NotebookWord =>
	(NOTEBOOK_WORDS as readonly (string | null)[]).includes(word);

/** @throws UsageError where the folder is missing, or one stands where none belongs */
export function runNotebook(word: NotebookWord, folder: string | null, request: NotebookRequest, io: Io): number {
	if (word === 'verify') {
		if (folder === null) return verified(request, io);
		throw new UsageError(LOG_USAGE.verify(folder));
	}
	if (folder !== null) return runExchange(word, folder, request, io);
	throw new UsageError(LOG_USAGE.folder(word));
}

/** Exit code 6 where a log is damaged. */
function verified({ home, json }: NotebookRequest, io: Io): number {
	const { rows } = new SessionCache(home).read(shownReading(io));
	const found = verifySessions(home, rows, undefined, progressOn(io));
	if (json) printJson(io, verifiedDocument(found));
	else print(io, verifiedText(found));
	return found.faults.length > 0 ? EXIT.damaged : 0;
}

/** Exit code 5 where the disk refused; 6 where a log was left out for what is in it, 4 where another program writes it, and nothing worse befell. */
function runExchange(way: ExchangeWay, folder: string, { home, json }: NotebookRequest, io: Io): number {
	if (way === 'import' && !existsSync(folder)) throw new UsageError(LOG_USAGE.noFolder(folder));
	const options = { now: new Date(), onEach: progressOn(io) };
	const result = way === 'export' ? exportSessions(home, folder, options) : importSessions(home, folder, options);
	if (json) printJson(io, exchangedDocument(folder, result));
	else print(io, exchangedText(way, folder, result));
	return exchangeExitCode(result);
}

const IN_USE: ReadonlySet<LeftOut['code']> = new Set(['busy', 'locked']);

function exchangeExitCode({ left, stopped }: Exchanged): number {
	if (stopped !== null) return EXIT.notSaved;
	if (left.some(({ why }) => !IN_USE.has(why.code))) return EXIT.damaged;
	return left.length > 0 ? EXIT.locked : 0;
}
