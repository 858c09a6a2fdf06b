import type { JournalFact } from '../journal/facts.ts';
import { journalWords } from './journal.ts';

/** What an error tells the operator: its fact in words, or its own sentence. */
export function errorWords(error: unknown): string {
	if (!(error instanceof Error)) return String(error);
	return isTelling(error) ? journalWords(error.fact) : error.message;
}

/** Errors of a log carry a fact; no others have that name for anything. */
function isTelling(error: Error): error is Error & { fact: JournalFact } {
	const fact = 'fact' in error ? error.fact : null;
	return typeof fact === 'object' && fact !== null && 'code' in fact;
}
