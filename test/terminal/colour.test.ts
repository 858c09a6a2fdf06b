import { expect, test } from 'vitest';
import { isPlain, wantsColour } from '../../src/terminal/colour.ts';
import { signalExitCode } from '../../src/terminal/signals.ts';

test.each([
	['a usual terminal', { TERM: 'xterm-256color' }, false, true],
	['--no-color', { TERM: 'xterm-256color' }, true, false],
	// Source: no-color.org: "when present and not an empty string (regardless of its value)".
	['NO_COLOR=1', { TERM: 'xterm-256color', NO_COLOR: '1' }, false, false],
	['NO_COLOR=0', { TERM: 'xterm-256color', NO_COLOR: '0' }, false, false],
	['NO_COLOR empty', { TERM: 'xterm-256color', NO_COLOR: '' }, false, true],
	['TERM=dumb', { TERM: 'dumb' }, false, false],
])('colours: %s', (_, environment, noColour, wanted) => {
	expect(wantsColour(environment, noColour)).toBe(wanted);
});

test('only a dumb terminal is plain', () => {
	expect([isPlain({ TERM: 'dumb' }), isPlain({ TERM: 'xterm' }), isPlain({})]).toEqual([true, false, false]);
});

// Source: POSIX, "Exit Status for Commands" (over 128 for a signal), with the signal numbers of signal.h.
test.each([
	['SIGHUP', 129],
	['SIGINT', 130],
	['SIGTERM', 143],
] as const)('%s ends with %i', (signal, code) => {
	expect(signalExitCode(signal)).toBe(code);
});
