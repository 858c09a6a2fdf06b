import type { BentAs } from '../tube/job.ts';
import { keptHandWords, noEndWords, programWords } from '../words/usage/command-line.ts';
import type { CommandLine } from './command.ts';
import { UsageError } from './usage-error.ts';

/** How a job is to be bent, for every command that takes one to the bender. */
export const BENT_AS_OPTIONS = { mirror: {}, from: { value: 'END' } } as const;

/** @throws UsageError for an end that is none, and where a session that is resumed keeps what it was begun with */
export function bentAsIn({ command, options }: CommandLine): BentAs {
	const { mirror, from, resume } = options;
	if (resume !== undefined && (mirror !== undefined || from !== undefined)) {
		throw new UsageError(keptHandWords(programWords(command)));
	}
	if (from !== undefined && from !== 'start' && from !== 'far') {
		throw new UsageError(noEndWords(programWords(command), String(from)));
	}
	return { mirror: mirror === true, from: from ?? 'start' };
}
