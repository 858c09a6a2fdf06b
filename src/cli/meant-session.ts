import { sessionsNamed } from '../journal/by-name.ts';
import { severalWords } from '../words/session-list.ts';
import { UsageError } from './usage-error.ts';

/** The one session that is meant by a name: its id, the first characters of it, or `last`. @throws UsageError where it may be several: it says which */
export function meantSession(home: string, name: string): string {
	const ids = sessionsNamed(home, name);
	if (ids.length > 1) throw new UsageError(severalWords(name, ids));
	return ids[0] ?? name;
}
