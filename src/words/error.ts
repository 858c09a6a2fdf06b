import type { JobFileError } from '../job/fault.ts';
import type { JobNotSavedFact } from '../job/save.ts';
import type { JournalFact } from '../journal/facts.ts';
import type { SettingsFact } from '../settings/facts.ts';
import { faultLines } from './job/fault.ts';
import { journalWords } from './journal.ts';
import { jobNotSavedWords } from './refused.ts';
import { settingsWords } from './settings.ts';

type TellingFact = JournalFact | JobFileError['fact'] | JobNotSavedFact | SettingsFact;

/** What an error tells the operator: its fact in words, or its own sentence. */
export function errorWords(error: unknown): string {
	if (!(error instanceof Error)) return String(error);
	return isTelling(error) ? tellingFactWords(error.fact) : error.message;
}

function tellingFactWords(fact: TellingFact): string {
	if (fact.code === 'job-file') return faultLines(fact.path, fact.faults);
	if (isOfSaving(fact)) return jobNotSavedWords(fact);
	return isOfSettings(fact) ? settingsWords(fact) : journalWords(fact);
}

const isOfSaving = (fact: TellingFact): fact is JobNotSavedFact =>
	fact.code === 'job-not-saved' || fact.code === 'no-job-folder';

const isOfSettings = (fact: JournalFact | SettingsFact): fact is SettingsFact => fact.code.startsWith('settings-');

/** Errors of ours carry a fact; no others have that name for anything. */
function isTelling(error: Error): error is Error & { fact: TellingFact } {
	const fact = 'fact' in error ? error.fact : null;
	return typeof fact === 'object' && fact !== null && 'code' in fact;
}

/** The system refused a write that is nobody's fault. */
export const diskRefusedWords = (why: string): string =>
	`The disk refused a write (${why}). Make room or choose another place.`;

/** A fault of the program's own. `shown`: where it came from is shown too. */
export const ownFaultWords = (what: string, shown: boolean): string =>
	`Something went wrong in the program itself: ${what}.${shown ? '' : ' To see where, run the same again with --debug.'}`;
