import type { JobFileError } from '../job/fault.ts';
import type { JournalFact } from '../journal/facts.ts';
import { faultLines } from './job/fault.ts';
import { journalWords } from './journal.ts';

type TellingFact = JournalFact | JobFileError['fact'];

/** What an error tells the operator: its fact in words, or its own sentence. */
export function errorWords(error: unknown): string {
	if (!(error instanceof Error)) return String(error);
	return isTelling(error) ? factWords(error.fact) : error.message;
}

function factWords(fact: TellingFact): string {
	return fact.code === 'job-file' ? faultLines(fact.path, fact.faults) : journalWords(fact);
}

/** Errors of ours carry a fact; no others have that name for anything. */
function isTelling(error: Error): error is Error & { fact: TellingFact } {
	const fact = 'fact' in error ? error.fact : null;
	return typeof fact === 'object' && fact !== null && 'code' in fact;
}
