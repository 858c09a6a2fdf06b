import { expect, test } from 'vitest';
import { isPlain, wantsAscii, wantsColor } from '../../src/terminal/color.ts';
import { signalExitCode } from '../../src/terminal/signals.ts';

test.each([
	['a usual terminal', { TERM: 'xterm-256color' }, false, true],
	['--no-color', { TERM: 'xterm-256color' }, true, false],
	// Source: no-color.org: "when present and not an empty string (regardless of its value)".
	['NO_COLOR=1', { TERM: 'xterm-256color', NO_COLOR: '1' }, false, false],
	['NO_COLOR=0', { TERM: 'xterm-256color', NO_COLOR: '0' }, false, false],
	['NO_COLOR empty', { TERM: 'xterm-256color', NO_COLOR: '' }, false, true],
	['TERM=dumb', { TERM: 'dumb' }, false, false],
])('colors: %s', (_, environment, noColor, wanted) => {
	expect(wantsColor(environment, noColor)).toBe(wanted);
});

test('only a dumb terminal is plain', () => {
	expect([isPlain({ TERM: 'dumb' }), isPlain({ TERM: 'xterm' }), isPlain({})]).toEqual([true, false, false]);
});

// Source: POSIX, "Environment Variables": LC_ALL before LC_CTYPE before LANG, and the locale C; the encoding is after the point.
test.each([
	[{}, false],
	[{ LANG: 'en_GB.UTF-8' }, false],
	[{ LANG: 'C.UTF-8' }, false],
	[{ LANG: 'en_GB' }, false],
	[{ LANG: 'C' }, true],
	[{ LANG: 'POSIX' }, true],
	[{ LANG: 'C', LC_ALL: 'en_GB.utf8' }, false],
	[{ LANG: 'en_GB.UTF-8', LC_CTYPE: 'C' }, true],
	[{ LANG: 'de_DE.ISO-8859-1' }, true],
	[{ LANG: 'de_DE.UTF-8@euro' }, false],
	[{ LANG: 'en_GB.UTF-8', TERM: 'dumb' }, true],
])('ASCII only with %o: %s', (environment, wanted) => {
	expect(wantsAscii(environment)).toBe(wanted);
});

// Source: POSIX, "Exit Status for Commands" (over 128 for a signal), with the signal numbers of signal.h.
test.each([
	['SIGHUP', 129],
	['SIGINT', 130],
	['SIGTERM', 143],
] as const)('%s ends with %i', (signal, code) => {
	expect(signalExitCode(signal)).toBe(code);
});
