import type { Key as InkKey } from 'ink';

/** A key as the reducers see it: a character, or a key with a name. */
export type Key =
	| { key: 'character'; text: string }
	| { key: 'return' | 'backspace' | 'escape' | 'up' | 'down' | 'pageUp' | 'pageDown' | 'home' | 'end' };

const NAMED = {
	return: 'return',
	backspace: 'backspace',
	delete: 'backspace',
	escape: 'escape',
	upArrow: 'up',
	downArrow: 'down',
	pageUp: 'pageUp',
	pageDown: 'pageDown',
	home: 'home',
	end: 'end',
} as const;

/** What Ink hands on, as a key; null for a key without a meaning here. */
export function keyOf(input: string, key: InkKey): Key | null {
	for (const [flag, name] of Object.entries(NAMED)) if (key[flag as keyof typeof NAMED]) return { key: name };
	return input === '' || key.ctrl || key.meta || key.tab ? null : { key: 'character', text: input };
}
