import { withoutLast } from '../../terminal/width.ts';
import type { Message } from '../session/session-state.ts';
import type { Key } from '../shell/keys.ts';
import { type FieldEntry, NOTHING } from '../shell/prompt.ts';
import type { HomePort, JobRow, SessionRow } from './home-port.ts';
import type { HomePage } from './home-view.ts';

export interface HomeState {
	jobs: readonly JobRow[];
	sessions: readonly SessionRow[];
	page: HomePage;
	entry: FieldEntry;
	/** Letters by which the list of the home page is cut down. */
	search: string;
	/** What stands in the text field of a page that has one. */
	text: string;
	message: Message | null;
}

export function homeState(
	port: HomePort,
	page: HomePage = { page: 'home' },
	message: Message | null = null,
): HomeState {
	const [rows, sessions, notice] = [port.jobs(), port.sessions(), port.notice?.() ?? null];
	const said: Message | null = message ?? (notice === null ? null : { kind: 'said', text: notice });
	return { jobs: rows, sessions, page, entry: NOTHING, search: '', text: '', message: said };
}

/** The state with another page open, without looking at the disk again. */
export function turnedTo(state: HomeState, page: HomePage, message: Message | null = null): HomeState {
	return { ...state, page, entry: NOTHING, search: '', text: '', message };
}

/** The state after a key that searches the lists of the home page and of the kept sessions; null: it is no such key. Digits pick, so they never search. */
export function searched(state: HomeState, key: Key): HomeState | null {
	const { page, search, entry } = state;
	if (page.page !== 'home' && !(page.page === 'review' && page.at.review === 'list')) return null;
	const first = { field: '', selected: 0 };
	if (key.key === 'character' && (/\p{L}/u.test(key.text) || (search !== '' && /[\s.'-]/.test(key.text)))) {
		return { ...state, search: search + key.text, entry: first, message: null };
	}
	if (search === '' || entry.field !== '') return null;
	if (key.key === 'escape' || (key.key === 'character' && key.text === '/'))
		return { ...state, search: '', entry: NOTHING };
	if (key.key !== 'backspace') return null;
	const shorter = withoutLast(search);
	return { ...state, search: shorter, entry: shorter === '' ? NOTHING : first };
}
