import { SEARCH_KEYS } from '../../../words/screen/home.ts';
import { KEY_SAYS } from '../../../words/screen/usual.ts';
import type { HomePage, HomeView } from '../home-view.ts';

/** What the pages under the home page have in common. */
export const TO_HOME = { label: KEY_SAYS.back, step: { step: 'page', page: { page: 'home' } } } as const;
/** Help, from which one comes back to the page that asked for it. */
export function helpFrom(from: HomePage) {
	return { label: KEY_SAYS.help, step: { step: 'page', page: { page: 'help', from } } } as const;
}

/** Everything else, from which one comes back to the page that asked for it. */
export function moreFrom(from: HomePage) {
	return { label: KEY_SAYS.more, step: { step: 'page', page: { page: 'more', from } } } as const;
}

/** `?` is help on every page where it is typed into nothing; `h` too, but where letters search. */
export function helpKeys(from: HomePage) {
	const { step } = helpFrom(from);
	return { keys: [['h', KEY_SAYS.help]], shortcuts: { h: step, '?': step } } as const;
}

/** The keys of a list in which letters search, as the last lines show them. */
export const searchKeys = (search: string): HomeView['keys'] =>
	search === '' ? [SEARCH_KEYS.begin, ['?', KEY_SAYS.help]] : [SEARCH_KEYS.mend];
