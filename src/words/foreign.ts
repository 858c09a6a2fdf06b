/**
 * What a text that came from elsewhere must not do to whoever reads it: control characters act on a terminal (ECMA-48: C0, delete, C1), a line's end
 * begins a line that we never wrote, and bidirectional controls put a line in another order (Unicode Standard Annex 9). A half of a surrogate pair is
 * no character.
 */
const ACTING = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu;
const ACTING_BUT_LINES = /[^\P{Cc}\n]|[\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu;

/** As long as a text of ours may be; a name is as long as a job file may have it. */
const LONGEST_TEXT = 4096;
const LONGEST_NAME = 80;

/** A text that was typed, or came with a file, as it is shown: on one line, what acts on a terminal written out, and cut where it runs long. */
export function foreign(text: string, longest = LONGEST_TEXT): string {
	const kept = text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;
	return kept.replace(ACTING, escaped);
}

/** A name as it is shown. */
export const foreignName = (name: string): string => foreign(name, LONGEST_NAME);

/** Lines of ours as they leave the program: whatever else came into them does nothing to the terminal. */
export function harmless(lines: string): string {
	return lines.replace(ACTING_BUT_LINES, escaped);
}

/** A value as JSON that does nothing to a terminal either: JSON alone leaves everything above 1f hexadecimal as it is. */
export function jsonText(value: unknown, indent?: number): string {
	return harmless(JSON.stringify(value, null, indent));
}

/** Written as JSON has it, which needs no more than ASCII. */
function escaped(character: string): string {
	const short = SHORT[character];
	return short ?? `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

const SHORT: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };
