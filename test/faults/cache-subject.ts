/** The cache of the kept sessions on a disk that fails: whatever becomes of it, lists are what the logs say. */
import { sessionPath } from '../../src/journal/catalogue.ts';
import { JournalError } from '../../src/journal/errors.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { must, type Subject } from './subject.ts';

const HOME = '/home';
const AT = '2026-01-01T08:00:00.000Z';

function place(fs: FaultFs, day: number): void {
	const record = encodeRecord({ seq: 0, v: 1, at: AT, text: `session ${day}` });
	fs.place(sessionPath(HOME, `2026010${day}-080000-ab12`), record, day);
}

export const cacheSubject: Subject<{ error: unknown }> = {
	name: 'cache',
	run(fs) {
		try {
			for (const folder of [HOME, `${HOME}/sessions`]) fs.mkdirSync(folder);
			for (const day of [1, 2, 3]) {
				place(fs, day);
				new SessionCache(HOME, fs).read();
			}
			return { error: null };
		} catch (error) {
			return { error };
		}
	},
	check(fs, { error }) {
		const isOurs = error === null || error instanceof PowerCut || error instanceof JournalError || isErrno(error);
		must(isOurs, `ended by ${error}`);
		if (!fs.files().some((name) => name.endsWith('.log'))) return;
		const listed = rows(new SessionCache(HOME, fs));
		fs.vanish(`${HOME}/cache`);
		must(listed === rows(new SessionCache(HOME, fs)), 'the cache says something else than the logs');
		must(listed === rows(new SessionCache(HOME, fs)), 'what was just written to the cache says something else');
	},
};

/** Of making the folders, which is not the cache's. */
const isErrno = (error: unknown): boolean => error instanceof Error && 'code' in error;

const rows = (cache: SessionCache): string =>
	JSON.stringify(
		cache.read().rows.map(({ id, path, touched, status, problem }) => [id, path, touched, status, problem]),
	);
