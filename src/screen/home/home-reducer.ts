import type { Key } from '../shell/keys.ts';
import { NOTHING, pressed, renewed } from '../shell/prompt.ts';
import { type HomeState, searched } from './home-state.ts';
import type { HomeStep, HomeView } from './home-view.ts';

/** What comes of a key outside of a session: another state, or something to be done. Pure. */
export type HomeReduced = { home: HomeState } | { step: HomeStep };

export function homeKey(home: HomeState, { prompt, shortcuts, moves }: HomeView, key: Key): HomeReduced {
	const found = searched(home, key);
	if (found !== null) return { home: found };
	const shortcut = key.key === 'character' && home.entry.field === '' ? shortcuts?.[key.text.toLowerCase()] : undefined;
	if (shortcut !== undefined) return { step: shortcut };
	const move = moves?.[key.key === 'character' ? key.text : key.key];
	if (move !== undefined) return { step: move };
	const outcome = pressed(prompt, renewed(home.entry, home.message, key), key);
	if ('step' in outcome) return outcome;
	if ('wrong' in outcome) return { home: { ...home, message: { kind: 'wrong', text: outcome.wrong } } };
	return { home: { ...home, entry: outcome.entry, message: null } };
}

/** The text field now holds `value`; `/` in an empty one goes back, for a numeric pad has no Esc. */
export function homeText(home: HomeState, { prompt }: HomeView, value: string): HomeReduced {
	const { back } = prompt;
	if (value === '/' && home.text === '') return back === undefined ? { home } : { step: back.step };
	return { home: { ...home, text: value, entry: NOTHING, message: null } };
}

export function homeTextEntered(home: HomeState, { prompt }: HomeView): HomeReduced {
	const step = prompt.text?.(home.text.trim());
	if (step === undefined) return { home };
	return typeof step === 'string' ? { home: { ...home, message: { kind: 'wrong', text: step } } } : { step };
}
