import type { FsPort } from '../files/fs-port.ts';
import type { LockSelf } from './lock.ts';

/** What a writer works with besides its file. */
export interface WriterParts {
	fs: FsPort;
	self: LockSelf;
	now: Date;
}
