/** Why no screen can be opened, or no session gone on with, and what to write instead. */

/** What is no terminal. */
export type NoTerminal = 'stdin' | 'stdout';

const NO_TERMINAL: Readonly<Record<NoTerminal, string>> = {
	stdin: 'standard input is not a terminal',
	stdout: 'standard output is not a terminal',
};

/** `job`: a job file of the folder in use. */
export const noHomeScreenWords = (why: NoTerminal, job: string): string =>
	`The home screen needs a terminal, but ${NO_TERMINAL[why]}. Without one: pullbook layout ${job}, pullbook bend ${job} --lines, pullbook log; pullbook help lists every command.`;

export const noSessionScreenWords = (why: NoTerminal, job: string): string =>
	`The guided session needs a terminal, but ${NO_TERMINAL[why]}. Without one: pullbook bend ${job} --lines, which asks and takes answers as JSON lines.`;

export const noPracticeScreenWords = (why: NoTerminal, job: string): string =>
	`Practice by hand needs a terminal, but ${NO_TERMINAL[why]}. Without one: pullbook practice ${job} --auto, which plays the operator too.`;

export const noJobFolderWords = (folder: string): string => `There is no folder "${folder}" to take jobs from.`;

export const noJobNowWords = (file: string): string =>
	`${file} cannot be read as a job any more: the job kept in the log governs.`;

export const nothingToResumeWords = (file: string): string =>
	`No unfinished session of ${file} is kept: start one without --resume. pullbook log lists all sessions.`;

/** As one types it. `rescue`: the folder in which the session lies, where its own log does not know. */
export function resumeCommand(job: string, id: string, rescue: string | null): string {
	const elsewhere = rescue === null ? '' : ` --rescue ${typedPath(rescue)}`;
	return `pullbook bend ${typedPath(job)} --resume ${id}${elsewhere}`;
}

const typedPath = (path: string): string => (/^[\w./-]+$/.test(path) ? path : `"${path}"`);

/** What `pullbook practice` is told wrong. */
export const PRACTICE_USAGE = {
	json: 'pullbook practice: --json prints what --auto plays; write --auto --json.',
	seed: (given: string): string => `pullbook practice: --seed is a whole number of up to nine digits, not "${given}".`,
} as const;
