/** A file beside a log that says one thing of it: itself a log, of one record. */
import { closeQuietly, createFile } from '../files/disk.ts';
import type { FsPort } from '../files/fs-port.ts';
import { encodeRecord } from './record.ts';

/** Writes it where nothing has that name; `at`: ISO time. Throws what the disk threw. */
export function createOneRecord(fs: FsPort, name: string, at: string, says: Readonly<Record<string, string>>): void {
	closeQuietly(fs, createFile(fs, name, encodeRecord({ seq: 0, v: 1, at, ...says })));
}
