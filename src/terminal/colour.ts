/** What of the environment tells how a terminal may be drawn on. */
export type TerminalEnvironment = Record<string, string | undefined>;

/** A terminal that knows no escape sequences, and perhaps only ASCII. */
export function isPlain(environment: TerminalEnvironment): boolean {
	return environment.TERM === 'dumb';
}

/** Whether colours may be used: not with `--no-color`, not with NO_COLOR set to anything (no-color.org), not on a plain terminal. */
export function wantsColour(environment: TerminalEnvironment, noColour: boolean): boolean {
	return !noColour && !environment.NO_COLOR && !isPlain(environment);
}
