/**
 * The cache of the kept sessions' rows: one file that only saves the folding of logs. Whatever is wrong with it, it is as if it were
 * not there, and the logs are folded anew.
 */
import { createHash } from 'node:crypto';
import { endianness } from 'node:os';
import { dirname, join } from 'node:path';
import { closeQuietly, exists, FOR_OWNER, FRESH_FILE, makeFolder, removeQuietly, writeAll } from '../files/disk.ts';
import { codeOf } from '../files/error-codes.ts';
import type { FsPort } from '../files/fs-port.ts';
import { sessionFolder } from './catalogue.ts';
import type { FoldedRow } from './folded-row.ts';
import { decoded, encoded, folderPrefix } from './kept-table.ts';
import { methodName } from './method-name.ts';

export function cachePath(home: string): string {
	return join(home, 'cache', 'sessions.cache');
}

/** The rows of the cache; none where it is absent, of another method, broken or unreadable. */
export function readCache(home: string, fs: FsPort): FoldedRow[] {
	let file: Buffer;
	try {
		file = fs.readFileSync(cachePath(home));
	} catch {
		// Absent or unreadable: the logs say the same.
		return [];
	}
	const body = file.subarray(HEAD_LENGTH);
	if (file.subarray(0, HEAD_LENGTH).toString('latin1') !== headOf(body)) return [];
	return decoded(aligned(body), folderPrefix(sessionFolder(home)));
}

/** A multiple of eight, so that the floats after it can be used where they lie. */
const HEAD_LENGTH = 128;

/** The first line: what wrote the file, and a checksum of the rest, without which nothing in it is believed. */
function headOf(body: Uint8Array): string {
	const checksum = createHash('sha256').update(body).digest('hex');
	return `${`pullbook sessions 3 ${methodName()} ${endianness()} ${checksum}`.padEnd(HEAD_LENGTH - 1)}\n`;
}

/** A small file may lie anywhere in memory that it shares with others. */
function aligned(bytes: Uint8Array): Uint8Array {
	return bytes.byteOffset % Float64Array.BYTES_PER_ELEMENT === 0 ? bytes : new Uint8Array(bytes);
}

/** A cache in the making that is older was left by a program that was killed. */
const ABANDONED_MS = 60_000;

/**
 * Writes the cache whole or not at all; gives its rows as reading it would. Null where it was not written, since there is no room or no
 * permission for it.
 */
export function writeCache(home: string, rows: readonly FoldedRow[], fs: FsPort): FoldedRow[] | null {
	const folder = folderPrefix(sessionFolder(home));
	const body = encoded(rows, folder);
	const path = cachePath(home);
	const fresh = `${path}.new`;
	try {
		makeFolder(fs, dirname(path));
		if (exists(fs, fresh) && Date.now() - fs.statSync(fresh).mtimeMs > ABANDONED_MS) fs.unlinkSync(fresh);
		const fd = fs.openSync(fresh, FRESH_FILE, FOR_OWNER);
		try {
			writeAll(fs, fd, Buffer.from(headOf(body), 'latin1'));
			writeAll(fs, fd, body);
		} catch (error) {
			removeQuietly(fs, fresh);
			throw error;
		} finally {
			closeQuietly(fs, fd);
		}
		// Not flushed: what a power cut leaves of it does not pass the checksum.
		fs.renameSync(fresh, path);
		return decoded(body, folder);
	} catch (error) {
		// A session that cannot keep its log will say so itself; the cache is only time saved.
		if (codeOf(error) === '') throw error;
		return null;
	}
}
