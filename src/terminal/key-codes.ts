/** The keys that the program knows, each as the one chunk that is handed on for it. */
export const RETURN = '\r';
export const BACKSPACE = '\b';
export const TAB = '\t';
export const ESCAPE = '\x1b';
export const INTERRUPT = '\x03';
export const SUSPEND = '\x1a';

export const UP = '\x1b[A';
export const DOWN = '\x1b[B';
export const RIGHT = '\x1b[C';
export const LEFT = '\x1b[D';
export const END = '\x1b[F';
export const HOME = '\x1b[H';
export const PAGE_UP = '\x1b[5~';
export const PAGE_DOWN = '\x1b[6~';

const LETTERS: Record<string, string> = { A: UP, B: DOWN, C: RIGHT, D: LEFT, F: END, H: HOME };

/** `ESC [ n ~`. */
const NUMBERS: Record<string, string> = {
	1: HOME,
	3: BACKSPACE,
	4: END,
	5: PAGE_UP,
	6: PAGE_DOWN,
	7: HOME,
	8: END,
};

/** `ESC O x`: the numeric pad in application mode (DEC VT100: `p` is 0 ... `y` is 9), and the arrows. */
export function singleShiftKey(final: string): string | null {
	if (final >= 'p' && final <= 'y') return String(final.charCodeAt(0) - 'p'.charCodeAt(0));
	if (final === 'M') return RETURN;
	if (final === 'X') return '=';
	if (final >= 'j' && final <= 'o') return '*+,-./'.charAt(final.charCodeAt(0) - 'j'.charCodeAt(0));
	return LETTERS[final] ?? null;
}

/** Modifiers come as 1 + bits; the locks (caps 64, num 128) change nothing about which key it was. */
function heldModifiers(field: string | undefined): number {
	const [bits, event] = (field ?? '1').split(':');
	if (event === '3') return -1;
	return ((Number(bits) || 1) - 1) & ~(64 | 128);
}

/**
 * A control sequence's key: `parameters` between `ESC [` and the final byte. Null for whatever is not known, with a modifier
 * held down, or a key's release.
 */
export function controlSequenceKey(parameters: string, final: string): string | null {
	if (final === 'u') return codepointKey(parameters);
	const fields = parameters.split(';');
	if (heldModifiers(fields[1]) !== 0) return null;
	if (final === '~') return NUMBERS[fields[0] ?? ''] ?? null;
	return fields[0] === '' || fields[0] === '1' ? (LETTERS[final] ?? null) : null;
}

/** The kitty keyboard protocol's own numbers for the numeric pad, from 57399 on (kitty, "Comprehensive keyboard handling"). */
const KEYPAD_FIRST = 57399;
const KEYPAD = [...'0123456789./*-+', RETURN, '=', ',', LEFT, RIGHT, UP, DOWN, PAGE_UP, PAGE_DOWN, HOME, END];
const OF_CODE: Record<number, string> = {
	8: BACKSPACE,
	9: TAB,
	13: RETURN,
	27: ESCAPE,
	127: BACKSPACE,
	57426: BACKSPACE,
};

function codepointKey(parameters: string): string | null {
	const fields = parameters.split(';');
	const [code = 0, shifted] = (fields[0] ?? '').split(':').map(Number);
	const held = heldModifiers(fields[1]);
	if (held < 0) return null;
	if (held === 4) return code === 99 ? INTERRUPT : code === 122 ? SUSPEND : null;
	if (held > 1) return null;
	const named = OF_CODE[code] ?? KEYPAD[code - KEYPAD_FIRST];
	if (named !== undefined) return named;
	const text = fields[2] ? Number(fields[2].split(':')[0]) : held === 1 && shifted ? shifted : code;
	const privateUse = text >= 0xe000 && text <= 0xf8ff;
	// A sequence may hold what is no number, such as a terminal's answer ESC [ ? 5 u.
	return !Number.isInteger(text) || text < 0x20 || privateUse || text > 0x10ffff
		? null
		: printable(String.fromCodePoint(text));
}

/** The character itself, or null for a control character, a half of a surrogate pair or a character that shows nothing. */
export function printable(character: string): string | null {
	return /^[\p{C}\p{Zl}\p{Zp}]$/u.test(character) ? null : character;
}
