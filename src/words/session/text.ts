import { foreign, foreignName } from '../foreign.ts';
import { MORE } from './more.ts';

/** The pages that take free text. */

/** Going on in another folder, since the session's own disk refuses. */
export const RESCUE = {
	title: 'Go on in another folder',
	label: 'Folder',
	empty: 'Write a folder on another disk, for example /media/stick.',
	what: 'Press Enter to take this folder, or write another. The log with all its lines is copied there, and the session goes on in it. Once the disk is well again, resume the session: its lines come back.',
} as const;

export const HEAT = {
	title: 'Heat or certificate number',
	label: 'Heat, lot or certificate number',
	wrong: (longest: number): string =>
		`Write the number as it stands on the tube, at most ${longest} characters; / goes back.`,
	now: (heat: string | null): string =>
		`${heat === null ? 'Not told yet.' : `Now ${foreignName(heat)}.`} It is kept with this tube, and taken for the pieces after it.`,
} as const;

export const NOTE = {
	title: 'Note',
	label: 'Note',
	empty: 'Write the note first; / goes back.',
	what: 'It is kept in the log with the time. The question that is open stays open.',
} as const;

export const SCRAP = {
	title: 'Scrap the tube',
	label: 'Why is it scrap?',
	wrong: 'Say why in a few words, not a number; / goes back.',
	what: 'The session ends with it. Its readings are kept.',
} as const;

/** Giving a tube up, asked once more. */
export const SCRAP_SURE = {
	title: 'Scrap the tube?',
	plus: MORE.scrap,
	empty: 'Press + to scrap the tube, / to go back.',
	why: (why: string): string => `Why: ${foreign(why)}`,
} as const;
