import type { CommandWords } from './command-words.ts';
import { OF_HOME } from './of-home.ts';
import { OF_JOBS } from './of-jobs.ts';

/** What `pullbook` without a command does. */
export const HOME_WORDS = {
	summary: 'the home screen: pick a job, resume, review',
	options: {},
	examples: [
		['pullbook', 'the home screen with the jobs in ./jobs'],
		['pullbook ~/tubes', 'the same with the jobs of another folder'],
	],
} as const satisfies CommandWords;

/** The words of every command, by its name. */
export const COMMAND_WORDS = {
	...OF_JOBS,
	...OF_HOME,
	completion: {
		summary: 'lets your shell complete jobs, sessions, benders',
		options: {},
		examples: [
			['pullbook completion bash', 'print what goes into ~/.bashrc'],
			['pullbook completion zsh', 'the same for zsh'],
			['pullbook completion fish', 'the same for fish'],
		],
		notes: [
			'bash: put source <(pullbook completion bash) into ~/.bashrc.',
			'zsh: put source <(pullbook completion zsh) into ~/.zshrc, after compinit.',
			'fish: pullbook completion fish > ~/.config/fish/completions/pullbook.fish',
		],
	},
	schema: {
		summary: 'the JSON Schema of a document',
		options: {},
		examples: [
			['pullbook schema log', 'the form of pullbook log ID --json'],
			['pullbook schema layout', 'of what pullbook layout JOB --json prints'],
			['pullbook schema job', 'of a job file, for an editor that checks as you type'],
		],
	},
	help: {
		summary: 'how to use a command, or a topic below',
		options: { man: 'the whole help as a manual page' },
		examples: [
			['pullbook help bend', 'how to start and resume a session'],
			['pullbook help keys', 'every key of the screen'],
			['pullbook help --man', 'all help as a manual page: keep it as pullbook.1'],
		],
	},
} as const satisfies Record<string, CommandWords>;

export type CommandName = keyof typeof COMMAND_WORDS;

/** What the help of the whole program begins with, and its headings. */
const DOES = 'guides a tube through a rotary-draw bender, bend by bend';
export const PROGRAM = `pullbook ${DOES}.`;
export const HEADINGS = {
	examples: 'Examples',
	commands: 'Commands',
	topics: 'Topics',
	options: 'Options',
	common: 'Options of every command',
} as const;

/** What the manual page tells of the surroundings. */
export const ENVIRONMENT: readonly (readonly [name: string, says: string])[] = [
	['PULLBOOK_HOME', 'The folder of settings and logs, where --home does not name one.'],
	['XDG_DATA_HOME', 'Where it is set and PULLBOOK_HOME is not, the folder is pullbook in it.'],
	['NO_COLOR', 'Where it is set, nothing is drawn in color.'],
];

/** The headings of the manual page, which man(7) writes in capitals, and the book that it belongs to. */
export const MANUAL = {
	name: 'PULLBOOK',
	does: `pullbook - ${DOES}`,
	book: 'User Commands',
	headings: { name: 'NAME', synopsis: 'SYNOPSIS', exitStatus: 'EXIT STATUS', environment: 'ENVIRONMENT' },
} as const;

/** What a document is that has a schema. */
export const DOCUMENT_WORDS = {
	log: 'What pullbook log ID --json prints.',
	layout: 'What pullbook layout JOB --json prints.',
	job: 'A job file, version 1.',
} as const;
