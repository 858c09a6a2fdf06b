import { type FsPort, realFs } from '../files/fs-port.ts';
import { type LockSelf, thisProcess } from './lock.ts';

/** What a writer works with besides its file. */
export interface WriterParts {
	fs: FsPort;
	self: LockSelf;
	now: Date;
}

export type PartsGiven = Pick<WriterParts, 'now'> & Partial<WriterParts>;

/** The real disk and this process, but where a test gives others. */
export function writerParts({ now, fs = realFs, self = thisProcess() }: PartsGiven): WriterParts {
	return { now, fs, self };
}
