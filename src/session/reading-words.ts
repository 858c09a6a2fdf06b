import type { ReadingKind } from './protocol.ts';

/** What each kind of reading is, in the words of the bench. */
export const KINDS: Readonly<Record<ReadingKind, string>> = {
	loaded: 'dial under load',
	released: 'dial after release',
	pointer: 'dial with the tube snug',
	angle: 'angle',
	mark: 'mark from the start end',
	rotation: 'rotation',
	length: 'length',
	check: 'check',
};
