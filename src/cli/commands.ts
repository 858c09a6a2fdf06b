/** Every command, its operands, options and examples: what the parser accepts and what `help` prints. */
export interface OptionSpec {
	/** The name of the value the option takes; absent: it takes none. */
	value?: string;
	/** The value may be left out. */
	optional?: true;
	says: string;
}
export interface CommandSpec {
	summary: string;
	/** Names of the operands, in order. */
	operands: readonly string[];
	/** How many operands must and may be given. */
	least: number;
	most: number;
	options: Readonly<Record<string, OptionSpec>>;
	examples: readonly (readonly [line: string, does: string])[];
	/** Sentences under the options. */
	notes?: readonly string[];
}

/** Taken by every command. */
export const COMMON_OPTIONS: Readonly<Record<string, OptionSpec>> = {
	home: { value: 'DIR', says: 'keep settings, logs and cache under DIR (else PULLBOOK_HOME, else your data folder)' },
	'no-color': { says: 'draw without colour, as with NO_COLOR set' },
	debug: { says: 'show where an error came from' },
	help: { says: 'show this help' },
	version: { says: 'show the version' },
};

const json: OptionSpec = { says: 'print one JSON document and nothing else' };

/** What `pullbook` without a command does. */
export const HOME_COMMAND: CommandSpec = {
	summary: 'the home screen: pick a job, go on with one that was interrupted, review a session',
	operands: ['FOLDER'],
	least: 0,
	most: 1,
	options: {},
	examples: [
		['pullbook', 'open the home screen with the jobs in ./jobs'],
		['pullbook ~/tubes', 'open it with the jobs in another folder'],
	],
};

export const COMMANDS: Readonly<Record<string, CommandSpec>> = {
	bend: {
		summary: 'the guided session: bend the tube of a job, pull by pull',
		operands: ['JOB'],
		least: 1,
		most: 1,
		options: {
			lines: { says: 'ask and answer in JSON lines over standard input and output, without a screen' },
			resume: { value: 'ID', optional: true, says: "go on with the job's unfinished session, or with session ID" },
			'no-learn': { says: 'neither read nor write what other sessions taught' },
		},
		examples: [
			['pullbook bend jobs/bow-rail.json', 'bend the tube on the screen'],
			['pullbook bend jobs/bow-rail.json --resume', 'go on where the last session stopped'],
			['pullbook bend jobs/bow-rail.json --lines', 'the same session as JSON lines, for a pipe'],
		],
		notes: ['A session that is left with exit code 3 is kept; `--resume` goes on at the question that was open.'],
	},
	layout: {
		summary: 'the mark table, cut length, checks and warnings, without bending',
		operands: ['JOB'],
		least: 1,
		most: 1,
		options: { json },
		examples: [
			['pullbook layout jobs/bow-rail.json', 'print the table to take to the tube'],
			['pullbook layout jobs/bow-rail.json --json', 'the same numbers, unrounded, for another program'],
		],
	},
	check: {
		summary: 'say every fault of job files at once',
		operands: ['JOB'],
		least: 1,
		most: Number.POSITIVE_INFINITY,
		options: { json },
		examples: [
			['pullbook check jobs/bow-rail.json', 'check one file'],
			['pullbook check jobs/*.json', 'check a folder'],
		],
		notes: ['Exit code 0 when every file is right, 2 when one is not.'],
	},
	log: {
		summary: 'the sessions kept, newest first; with an ID, one of them',
		operands: ['ID'],
		least: 0,
		most: 1,
		options: { json },
		examples: [
			['pullbook log', 'list the sessions'],
			['pullbook log ID', 'show what happened in one, pull by pull'],
			['pullbook log ID --json', 'the same for another program'],
		],
	},
	bender: {
		summary: 'the benders and dies that are set up',
		operands: ['NAME'],
		least: 0,
		most: 1,
		options: { json },
		examples: [['pullbook bender', 'list them']],
	},
	help: {
		summary: 'examples and options of a command',
		operands: ['COMMAND'],
		least: 0,
		most: 1,
		options: {},
		examples: [['pullbook help bend', 'how to start and resume a session']],
	},
};
