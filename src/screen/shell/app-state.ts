import type { HomeState } from '../home/home-state.ts';
import type { SessionState } from '../session/session-state.ts';
import type { ReaderState } from './reader-state.ts';

export interface HomeShown {
	view: 'home';
	home: HomeState;
}

export interface SessionShown {
	view: 'session';
	session: SessionState;
}

/** What is on the screen. */
export type AppState =
	| HomeShown
	/** `back`: where it was opened. */
	| { view: 'reader'; reader: ReaderState; back: HomeShown | SessionShown }
	| SessionShown
	/** `title`, `says`: what is known already of what is being opened. */
	| { view: 'waiting'; title?: string; says?: string };

/** The exit code that an expected failure carries; null for an error of the program's own. */
export function exitCodeOf(error: unknown): number | null {
	const code = error instanceof Error && 'exitCode' in error ? error.exitCode : null;
	return typeof code === 'number' ? code : null;
}
