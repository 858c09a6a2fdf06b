import { ACTING, LONGEST_NAME, LONGEST_TEXT } from '../tube/names.ts';

const EVERY_ACTING = new RegExp(ACTING, 'gu');

/** A text that was typed, or came with a file, as it is shown: on one line, what acts on a terminal written out, and cut where it runs long. */
export function foreign(text: string, longest = LONGEST_TEXT): string {
	const kept = text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;
	return kept.replace(EVERY_ACTING, escapedCharacter);
}

/** A name as it is shown. */
export const foreignName = (name: string): string => foreign(name, LONGEST_NAME);

/** Lines of ours as they leave the program: whatever else came into them does nothing to the terminal. */
export function harmless(lines: string): string {
	return lines.replace(EVERY_ACTING, (character) => (character === '\n' ? character : escapedCharacter(character)));
}

/** A value as JSON that does nothing to a terminal either: JSON alone leaves everything above 1f hexadecimal as it is. */
export function jsonText(value: unknown, indent?: number): string {
	return harmless(JSON.stringify(value, null, indent));
}

/** Written as JSON has it, which needs no more than ASCII. */
function escapedCharacter(character: string): string {
	const short = SHORT[character];
	return short ?? `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

const SHORT: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };
