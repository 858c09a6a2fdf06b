import {
	BACKSPACE,
	controlSequenceKey,
	ESCAPE,
	INTERRUPT,
	printable,
	RETURN,
	SUSPEND,
	singleShiftKey,
	TAB,
} from './key-codes.ts';

/** A digital instrument that ends its reading with CR LF presses Enter once, not twice. */
const CRLF_WITHIN_MS = 50;

/** What makes an escape sequence of an ESC before it, even in the next chunk. No reading begins so. */
const INTRODUCER = /^[[\]OP_^]/;

type ParsedKeys = { length: number; keys: string[] } | 'unfinished';

const PLAIN_KEYS: Record<string, string> = {
	'\r': RETURN,
	'\n': RETURN,
	'\x7f': BACKSPACE,
	'\b': BACKSPACE,
	'\t': TAB,
	[INTERRUPT]: INTERRUPT,
	[SUSPEND]: SUSPEND,
};

const PASTE_START = '200';
const PASTE_END = '201';

/**
 * Cuts what a terminal sends into keys, one string each. An escape sequence that it does not know, or cannot read, gives no key.
 * Text may arrive cut anywhere: what is unfinished is kept until more comes, or until `expire` says that nothing more will.
 */
export class KeyParser {
	private kept = '';
	/** Whether what is kept ended the chunk in which it came: then a following character is a key of its own. */
	private escapeAlone = false;
	private returnedAt = Number.NEGATIVE_INFINITY;

	/** Whether something unfinished waits for more. */
	get waiting(): boolean {
		return this.kept !== '';
	}

	/** The keys in `chunk`, which came at `now` (milliseconds, any origin). */
	push(chunk: string, now: number): string[] {
		const keys: string[] = [];
		let text = this.kept + chunk;
		if (this.escapeAlone && chunk !== '' && !INTRODUCER.test(chunk)) {
			keys.push(ESCAPE);
			text = chunk;
		}
		this.kept = '';
		this.escapeAlone = false;
		while (text !== '') {
			const step = next(text);
			if (step === 'unfinished') {
				this.kept = text;
				this.escapeAlone = text === ESCAPE;
				break;
			}
			if (!this.secondHalfOfReturn(text, now)) keys.push(...step.keys);
			if (text[0] === '\r') this.returnedAt = now;
			else this.returnedAt = Number.NEGATIVE_INFINITY;
			text = text.slice(step.length);
		}
		return keys;
	}

	/** What is unfinished stays so: a lone ESC was the Esc key, anything longer was no key. */
	expire(): string[] {
		const keys = this.escapeAlone ? [ESCAPE] : [];
		this.kept = '';
		this.escapeAlone = false;
		return keys;
	}

	private secondHalfOfReturn(text: string, now: number): boolean {
		return text[0] === '\n' && now - this.returnedAt <= CRLF_WITHIN_MS;
	}
}

function next(text: string): ParsedKeys {
	const character = String.fromCodePoint(text.codePointAt(0)!);
	if (character === ESCAPE) return afterEscape(text, 1);
	// The one-byte forms of ESC [ and ESC O.
	if (character === '\x9b') return controlSequence(text, 1);
	if (character === '\x8f') return singleShift(text, 1);
	const key = PLAIN_KEYS[character] ?? printable(character);
	return { length: character.length, keys: key === null ? [] : [key] };
}

function afterEscape(text: string, at: number): ParsedKeys {
	const introducer = text[at];
	if (introducer === undefined) return 'unfinished';
	if (introducer === '[') return controlSequence(text, at + 1);
	if (introducer === 'O') return singleShift(text, at + 1);
	if (']P_^X'.includes(introducer)) return controlString(text, at + 1);
	if (introducer === ESCAPE) {
		const follower = text[at + 1];
		// ESC ESC [ A is an arrow with Alt held down; ESC ESC is the key pressed twice.
		if (follower === '[' || follower === 'O') return withoutKeys(afterEscape(text, at + 1));
		return { length: at, keys: [ESCAPE] };
	}
	// Any other character after ESC in one chunk came with Alt held down.
	return { length: at + String.fromCodePoint(text.codePointAt(at)!).length, keys: [] };
}

function withoutKeys(step: ParsedKeys): ParsedKeys {
	return step === 'unfinished' ? step : { length: step.length, keys: [] };
}

function singleShift(text: string, at: number): ParsedKeys {
	const final = text[at];
	if (final === undefined) return 'unfinished';
	if (final < '@' || final > '~') return { length: at, keys: [] };
	const key = singleShiftKey(final);
	return { length: at + 1, keys: key === null ? [] : [key] };
}

/** ECMA-48, 5.4: parameters 30..3F, intermediates 20..2F, final 40..7E. */
function controlSequence(text: string, at: number): ParsedKeys {
	// The Linux console's ESC [ [ A.
	if (text[at] === '[') return text.length > at + 1 ? { length: at + 2, keys: [] } : 'unfinished';
	let end = at;
	while (end < text.length && text[end]! >= ' ' && text[end]! <= '?') end++;
	const final = text[end];
	if (final === undefined) return 'unfinished';
	if (final < '@' || final > '~') return { length: end, keys: [] };
	const parameters = text.slice(at, end);
	// A mouse report in the old form: three more characters follow.
	if (final === 'M' && parameters === '') return text.length < end + 4 ? 'unfinished' : { length: end + 4, keys: [] };
	if (final === '~' && (parameters === PASTE_START || parameters === PASTE_END)) return { length: end + 1, keys: [] };
	const key = controlSequenceKey(parameters, final);
	return { length: end + 1, keys: key === null ? [] : [key] };
}

const STRING_ENDS = ['\x07', '\x1b\\', '\x9c'];

/** A string sequence (a terminal's answer to a question): up to BEL or ESC \. */
function controlString(text: string, at: number): ParsedKeys {
	const ends = STRING_ENDS.map((end) => ({ end, place: text.indexOf(end, at) })).filter(({ place }) => place >= 0);
	if (ends.length === 0) return 'unfinished';
	return { length: Math.min(...ends.map(({ end, place }) => place + end.length)), keys: [] };
}
