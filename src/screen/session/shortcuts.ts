import { LENGTH_KEYS, nextLengths } from '../../words/lengths.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import { SHORTCUTS } from '../../words/session/keys.ts';
import type { Key } from '../shell/keys.ts';
import type { Prompt } from '../shell/prompt.ts';
import { answer } from './pages/page.ts';
import { asksRelease } from './release.ts';
import type { SessionState, SessionStep } from './session-state.ts';

/** A key that has the same meaning wherever it has one, and no number begins with it. */
export interface Shortcut {
	key: string;
	label: string;
	brief?: string;
	step: SessionStep;
}

/** A tube that is to be set again and still lies there. */
const STILL: Shortcut = {
	key: 's',
	...SHORTCUTS.still,
	step: answer({ do: 'still' }),
};

const RELEASE: Shortcut = {
	key: 'r',
	...SHORTCUTS.release,
	step: { step: 'release', asked: true },
};

/** The shortcuts of the page that is open. In free text a letter is a letter. */
export function shortcutsOf(state: SessionState, { text }: Prompt<SessionStep>): Shortcut[] {
	const { page, ask, display, job } = state;
	if (text !== undefined) return [];
	const help: Shortcut = { key: 'h', label: KEY_SAYS.help, step: { step: 'page', page: { page: 'help', from: page } } };
	const lengths = nextLengths(job);
	const units: Shortcut = { key: 'u', label: LENGTH_KEYS[lengths], step: { step: 'display', changes: { lengths } } };
	const asked = page.page === 'ask' && (ask?.ask === 'set' || ask?.ask === 'pull');
	const mark: Shortcut = {
		key: 'm',
		...SHORTCUTS.mark(display.fromStart ? 'far' : 'start'),
		step: { step: 'display', changes: { fromStart: !display.fromStart } },
	};
	const list: Shortcut = {
		key: 'c',
		...SHORTCUTS.list(display.checklist),
		step: { step: 'display', changes: { checklist: !display.checklist } },
	};
	return [
		...(page.page === 'ask' && ask?.ask === 'set' && ask.still ? [STILL] : []),
		...(page.page === 'ask' && ask?.ask === 'pull' && !asksRelease(state) ? [RELEASE] : []),
		...(asked && ask.bend > 1 ? [mark] : []),
		...(asked && ask.ask === 'set' ? [list] : []),
		units,
		...(page.page === 'help' ? [] : [help]),
	];
}

/** The shortcut that a key stands for; only where nothing is typed yet, since units are words. */
export function shortcutOf(state: SessionState, prompt: Prompt<SessionStep>, key: Key): Shortcut | null {
	if (key.key !== 'character' || state.entry.field !== '') return null;
	const name = key.text === '?' ? 'h' : key.text.toLowerCase();
	return shortcutsOf(state, prompt).find((shortcut) => shortcut.key === name) ?? null;
}
