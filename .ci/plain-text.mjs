// Put in front of Ink's text measuring while bundling: what the program writes is plain, and for plain text the first call of a
// grapheme segmenter and of the emoji expressions would cost more than all the rest of a first frame.

/**
 * Characters that are one column wide and never join with a neighbour: printable ASCII and Latin-1, dashes, quotes, ellipsis, primes, arrows,
 * a few signs, box drawing, blocks, braille.
 */
const PLAIN =
	/^[\u0020-\u007e\u00a1-\u00ac\u00ae-\u00ff\u2010-\u201f\u2022\u2026\u2032\u2033\u2190-\u2193\u2212\u2500-\u259f\u2800-\u28ff]*$/;

/** Escape sequences are told apart by those who segment; a newline stands by itself too. */
const PLAIN_WITH_CONTROLS = new RegExp(PLAIN.source.replace('[', '[\\u001b\\u0007\\u000a'));

export const isPlain = (text) => PLAIN.test(text);

function* characters(text) {
	for (let index = 0; index < text.length; index++) yield { segment: text[index], index, input: text };
}

/** Like a grapheme segmenter of `Intl`, which is made only when text comes that needs one. */
export function lazySegmenter() {
	let real;
	return {
		segment(text) {
			if (PLAIN_WITH_CONTROLS.test(text)) return characters(text);
			real ??= new Intl.Segmenter(undefined, { granularity: 'grapheme' });
			return real.segment(text);
		},
	};
}

/** An expression that is made only when it is first asked: that of all emoji takes longer to make than a first frame to draw. */
export function lazyExpression(make) {
	let real;
	return {
		test(text) {
			real ??= make();
			return real.test(text);
		},
	};
}
