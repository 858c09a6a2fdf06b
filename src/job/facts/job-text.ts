/** What keeps a file from being read, and its text from being JSON. */
export type FileKind =
	| 'absent'
	| 'folder'
	| 'forbidden'
	| 'through-no-folder'
	| 'device-or-socket'
	| 'pipe'
	| 'too-large';

export type TextFound =
	| { code: 'file'; is: FileKind }
	/** The system's own text, where it said something else. */
	| { code: 'not-read'; text: string }
	| ({ code: 'end-of-file' } & TextPlace)
	| ({ code: 'text'; text: string } & TextPlace)
	/** The place of the second. */
	| ({ code: 'key-twice'; key: string } & TextPlace);

/** Where something stands in a text, counted from 1. */
export interface TextPlace {
	line: number;
	column: number;
}

/** What JSON has at a place. */
export type TextWanted =
	| 'end'
	| 'less-nesting'
	| 'value'
	| 'key'
	| 'closed-text'
	| 'comma-or-brace'
	| 'comma-or-bracket'
	| { colonAfter: string };

export type TextRight =
	| { code: 'readable-file' }
	| { code: 'key-once' }
	/** `comment`: what stands there looks like one, and JSON has none. */
	| { code: 'json'; wants: TextWanted; comment: boolean };
