import { LAST, sessionsNamed } from '../journal/by-name.ts';
import { NONE_KEPT, severalWords } from '../words/session-list.ts';
import { UsageError } from './usage-error.ts';

/**
 * The one session that is meant by a name: its id, the first characters of it, or `last`.
 * `rescue`: a folder in which sessions went on that the home may not know of.
 * @throws UsageError where it may be several: it says which; where it is `last` and none is kept
 */
export function meantSession(home: string, name: string, rescue: string | null = null): string {
	const ids = sessionsNamed(home, name, rescue);
	if (name === LAST && ids.length === 0) throw new UsageError(NONE_KEPT);
	if (ids.length > 1) throw new UsageError(severalWords(name, ids));
	return ids[0] ?? name;
}
