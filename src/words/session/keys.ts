import type { EndName } from '../../tube/job.ts';
import { MORE } from './more.ts';

/** What the keys of a session's pages do, and shorter for where that saves a line. */

export const TAKE_BACK = 'take back';

export const SHORTCUTS = {
	still: { label: MORE.still, brief: 'never left' },
	release: { label: 'ask the release', brief: 'release' },
	mark: (end: EndName): { label: string; brief: string } => {
		const from = `from ${end.toUpperCase()}`;
		return { label: `mark ${from}`, brief: from };
	},
	list: (shown: boolean): { label: string; brief: string } => ({
		label: shown ? 'list off' : 'list on',
		brief: 'list',
	}),
} as const;

/** A key among those that were typed too early. */
export const TYPED_ENTER = ' Enter ';
