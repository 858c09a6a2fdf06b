// Put in front of Ink's text measuring while bundling: what the program writes is plain, and plain text need not be segmented to be counted.

/**
 * Characters that are one column wide and never join with a neighbor: printable ASCII and Latin-1, dashes, quotes, ellipsis, primes, arrows,
 * a few signs, box drawing, blocks, braille.
 */
const PLAIN =
	/^[\u0020-\u007e\u00a1-\u00ac\u00ae-\u00ff\u2010-\u201f\u2022\u2026\u2032\u2033\u2190-\u2193\u2212\u2500-\u259f\u2800-\u28ff]*$/;

export const isPlain = (text) => PLAIN.test(text);
