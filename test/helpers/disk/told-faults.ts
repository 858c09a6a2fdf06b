import type { Fault } from '../../../src/job/facts/index.ts';
import { JobFileError } from '../../../src/job/fault.ts';
import { errorWords } from '../../../src/words/error.ts';
import { type ToldFault, toldFault } from '../../../src/words/job/fault.ts';

/** The faults of what was read, as they are told; none where there are none. */
export function toldFaults(read: object): ToldFault[] {
	return 'faults' in read ? (read.faults as readonly Fault[]).map(toldFault) : [];
}

/** What keeps a file from being loaded: how it is told, whole and fault by fault. */
export function toldRefusal(load: () => unknown): { error: JobFileError; message: string; faults: ToldFault[] } {
	try {
		load();
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { error, message: errorWords(error), faults: toldFaults(error.fact) };
	}
	throw new Error('The file was loaded.');
}
