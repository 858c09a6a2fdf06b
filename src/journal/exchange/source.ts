/** Logs that may be copied: whole, of this version, and what they say they are. */
import { causeOf, codeOf } from '../../files/error-codes.ts';
import type { FsPort } from '../../files/fs-port.ts';
import { startOfKnown, UnknownRecord } from '../../session/log/read-back.ts';
import { logName } from '../catalogue.ts';
import { JournalError } from '../errors.ts';
import { type HeldLog, held } from '../merge-back.ts';
import { faultOf } from '../read-log.ts';
import type { LeftOut } from './facts.ts';

/** A log that may be copied: its whole lines, and the id that its session began under. */
export interface Source extends HeldLog {
	id: string;
	path: string;
}

/** Hundreds of times as long as the longest session's. */
const MOST_BYTES = 64 * 2 ** 20;

/** The log at this path, or why it is left out. A last line that was cut short was never acknowledged, and is not a part of it. */
export function sourceAt(path: string, fs: FsPort): Source | LeftOut {
	try {
		const facts = fs.statSync(path);
		// Reading a pipe would wait for ever, and a device may have no end.
		if (!facts.isFile()) return { code: 'no-file', log: path };
		if (facts.size > MOST_BYTES) return { code: 'too-long', log: path, size: facts.size, most: MOST_BYTES };
		const { file, read } = held(path, fs);
		const fault = faultOf(path, read);
		if (fault !== null) return fault.fact;
		const { id } = startOfKnown(read.records);
		logName(id);
		return { id, path, file: file.subarray(0, read.size), read };
	} catch (error) {
		if (error instanceof JournalError || error instanceof UnknownRecord) return error.fact;
		if (codeOf(error) === '') throw error;
		return { code: 'log-unreadable', log: path, cause: causeOf(error) };
	}
}
