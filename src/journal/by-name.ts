import { realFs } from '../files/fs-port.ts';
import { logPlaces, newSessionId } from './catalogue.ts';

/** The newest session that is kept. */
export const LAST = 'last';

/**
 * The sessions that a name may mean, newest first: the one of that id, else those whose id begins so; for `last` the newest. None where it
 * means nothing that is kept. What is dated in the future, by a clock that was wrong, is the newest only where nothing else is kept.
 * `rescue`: a folder in which sessions went on that the home may not know of.
 */
export function sessionsNamed(home: string, name: string, rescue: string | null = null): string[] {
	const ids = logPlaces(home, realFs, rescue).map(({ id }) => id);
	if (name === LAST) {
		const newest = ids.find((id) => id <= newSessionId(new Date(), 'z')) ?? ids[0];
		return newest === undefined ? [] : [newest];
	}
	return ids.includes(name) ? [name] : ids.filter((id) => id.startsWith(name));
}
