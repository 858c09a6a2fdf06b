/** What of the environment tells how a terminal may be drawn on. */
export type TerminalEnvironment = Record<string, string | undefined>;

/** A terminal that knows no escape sequences, and perhaps only ASCII. */
export function isPlain(environment: TerminalEnvironment): boolean {
	return environment.TERM === 'dumb';
}

/** Whether a screen reader reads what is written, by what Ink itself goes by. It hears the words and does not see where they stand. */
export function isSpoken(environment: TerminalEnvironment): boolean {
	return environment.INK_SCREEN_READER === 'true';
}

/** Whether colors may be used: not with `--no-color`, not with NO_COLOR set to anything (no-color.org), not on a plain terminal. */
export function wantsColor(environment: TerminalEnvironment, noColor: boolean): boolean {
	return !noColor && !environment.NO_COLOR && !isPlain(environment);
}

/**
 * Whether only ASCII may be written: on a plain terminal, and in a locale that says so. Of the locale's variables the first that is set counts
 * (POSIX, "Environment Variables": LC_ALL, LC_CTYPE, LANG); `C` and `POSIX` know ASCII only, and so it is taken for any encoding but
 * UTF-8. With none set nobody has said anything, and terminals of today know Unicode.
 */
export function wantsAscii(environment: TerminalEnvironment): boolean {
	const locale = environment.LC_ALL || environment.LC_CTYPE || environment.LANG || '';
	if (isPlain(environment) || locale === 'C' || locale === 'POSIX') return true;
	const [, encoding = ''] = locale.split('.');
	return encoding !== '' && !/^utf-?8(@|$)/i.test(encoding);
}
