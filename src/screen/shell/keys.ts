import type { Key as InkKey } from 'ink';
import * as codes from '../../terminal/key-codes.ts';

/** A key as the reducers see it: a character, or a key with a name. */
export type Key =
	| { key: 'character'; text: string }
	| {
			key:
				| 'return'
				| 'backspace'
				| 'escape'
				| 'up'
				| 'down'
				| 'left'
				| 'right'
				| 'pageUp'
				| 'pageDown'
				| 'home'
				| 'end';
	  };

const KEY_OF_FLAG = {
	return: 'return',
	backspace: 'backspace',
	delete: 'backspace',
	escape: 'escape',
	upArrow: 'up',
	downArrow: 'down',
	leftArrow: 'left',
	rightArrow: 'right',
	pageUp: 'pageUp',
	pageDown: 'pageDown',
	home: 'home',
	end: 'end',
} as const;

/** What Ink hands on, as a key; null for a key without a meaning here. */
export function keyOf(input: string, key: InkKey): Key | null {
	for (const [flag, name] of Object.entries(KEY_OF_FLAG))
		if (key[flag as keyof typeof KEY_OF_FLAG]) return { key: name };
	return input === '' || key.ctrl || key.meta || key.tab ? null : { key: 'character', text: input };
}

const CODES: Record<string, Exclude<Key['key'], 'character'>> = {
	[codes.RETURN]: 'return',
	[codes.BACKSPACE]: 'backspace',
	[codes.ESCAPE]: 'escape',
	[codes.UP]: 'up',
	[codes.DOWN]: 'down',
	[codes.LEFT]: 'left',
	[codes.RIGHT]: 'right',
	[codes.PAGE_UP]: 'pageUp',
	[codes.PAGE_DOWN]: 'pageDown',
	[codes.HOME]: 'home',
	[codes.END]: 'end',
};

/** What the key stream hands on, as a key, without Ink; null for a key without a meaning here. */
export function keyOfChunk(chunk: string): Key | null {
	const name = CODES[chunk];
	if (name !== undefined) return { key: name };
	// Tab and other control characters.
	return chunk < ' ' || chunk === '\x7f' ? null : { key: 'character', text: chunk };
}
