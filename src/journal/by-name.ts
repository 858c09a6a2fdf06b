import { type FsPort, realFs } from '../files/fs-port.ts';
import { logPlaces } from './catalogue.ts';

/** The newest session that is kept. */
const LAST = 'last';

/**
 * The sessions that a name may mean, newest first: the one of that id, else those whose id begins so; for `last` the newest. None where it
 * means nothing that is kept.
 */
export function sessionsNamed(home: string, name: string, fs: FsPort = realFs): string[] {
	const ids = logPlaces(home, fs).map(({ id }) => id);
	if (name === LAST) return ids.slice(0, 1);
	return ids.includes(name) ? [name] : ids.filter((id) => id.startsWith(name));
}
