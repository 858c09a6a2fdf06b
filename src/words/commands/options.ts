/** What options say that several commands take. */

/** Taken by every command. */
export const COMMON_WORDS = {
	home: 'keep settings and logs under DIR (or set PULLBOOK_HOME)',
	ascii: 'draw the screen in ASCII only, as in the locale C',
	'no-color': 'draw without color, as with NO_COLOR set',
	debug: 'show where an error came from',
	help: 'show this help',
	version: 'show the version',
} as const;

export const JSON_WORDS = { json: 'print one JSON document and nothing else' } as const;

/** How a job is to be bent. */
export const BENT_AS_OPTION_WORDS = {
	mirror: "the opposite part: the drawing's mirror image",
	from: 'which end of the drawing is bent first: start (as drawn) or far',
} as const;

/** How a PDF is written. */
export const PDF_WORDS = {
	page: 'letter or a4; else as goes with inches or mm',
	force: 'write over a file that is there',
} as const;
