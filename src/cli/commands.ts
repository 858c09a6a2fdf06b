import { BENDER_EXAMPLES, BENDER_NOTES, BENDER_OPTIONS } from './bender-options.ts';
import type { CommandSpec, OptionSpec } from './command.ts';
import { BENT_AS_OPTIONS } from './hand-and-end.ts';
import { LOG_EXAMPLES, LOG_NOTES, LOG_OPTIONS } from './log-options.ts';
import { PAPER_EXAMPLES, PAPER_NOTES, PAPER_OPTIONS } from './paper-options.ts';
import { bend, bender, check, completion, cut, help, layout, log, openHome, paper, practice, schema } from './runs.ts';

/** Taken by every command. */
export const COMMON_OPTIONS: Readonly<Record<string, OptionSpec>> = {
	home: { value: 'DIR', says: 'keep settings and logs under DIR (or set PULLBOOK_HOME)' },
	ascii: { says: 'draw the screen in ASCII only, as in the locale C' },
	'no-color': { says: 'draw without color, as with NO_COLOR set' },
	debug: { says: 'show where an error came from' },
	help: { says: 'show this help' },
	version: { says: 'show the version' },
};

const json: OptionSpec = { says: 'print one JSON document and nothing else' };

/** What `pullbook` without a command does. */
export const HOME_COMMAND: CommandSpec = {
	summary: 'the home screen: pick a job, resume, review',
	operands: ['FOLDER'],
	least: 0,
	most: 1,
	options: {},
	examples: [
		['pullbook', 'the home screen with the jobs in ./jobs'],
		['pullbook ~/tubes', 'the same with the jobs of another folder'],
	],
	run: openHome,
};

export const COMMANDS: Readonly<Record<string, CommandSpec>> = {
	bend: {
		summary: 'the guided session: bend a tube, pull by pull',
		operands: ['JOB'],
		least: 1,
		most: 1,
		options: {
			lines: { says: 'ask and take answers as JSON lines, without a screen' },
			resume: { value: 'ID', optional: true, says: 'go on with the unfinished session, or session ID' },
			rescue: { value: 'DIR', says: 'go on in DIR when the disk refuses, or went on there' },
			'no-learn': { says: 'neither use nor keep what sessions teach' },
			...BENT_AS_OPTIONS,
		},
		examples: [
			['pullbook bend jobs/bow-rail.json', 'bend the tube on the screen'],
			['pullbook bend jobs/bow-rail.json --resume', 'go on where the last session stopped'],
			['pullbook bend jobs/bow-rail.json --lines', 'the same session as JSON lines, for a pipe'],
		],
		notes: ['A session left with exit code 3 is kept: --resume asks its open question again.'],
		run: bend,
	},
	layout: {
		summary: 'marks, cut length, checks and warnings',
		operands: ['JOB'],
		least: 1,
		most: 1,
		options: {
			json,
			chalk: { says: 'points of the center line to chalk on the bench, plane by plane' },
			'no-learn': { says: 'expect the radius by mechanics alone' },
			...BENT_AS_OPTIONS,
		},
		examples: [
			['pullbook layout jobs/bow-rail.json', 'print the table to take to the tube'],
			['pullbook layout jobs/bow-rail.json --json', 'the same, unrounded, for another program'],
			['pullbook layout jobs/bow-rail.json --chalk', 'what to draw on the bench, full size'],
			['pullbook layout jobs/mast-brace.json --mirror', 'the brace for the other side'],
			['pullbook layout jobs/mast-brace.json --from far', 'the same tube, begun at its far end'],
		],
		run: layout,
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
		run: check,
	},
	cut: {
		summary: 'which pieces from which sticks, with saw marks',
		operands: ['JOB'],
		least: 1,
		most: Number.POSITIVE_INFINITY,
		options: {
			stock: {
				value: 'LENGTH[xN]',
				repeats: true,
				says: 'sticks of this length, N of them; without N no end of them',
			},
			kerf: { value: 'LENGTH', says: 'what the saw takes of the tube; 1/8 in or 3 mm without it' },
			now: { says: 'count the sticks as they lie in the rack now' },
			json,
			csv: { says: 'print comma-separated values, a row a piece' },
			out: { value: 'FILE', says: 'write a PDF for the saw; - is standard output' },
			page: PAPER_OPTIONS.page!,
			force: PAPER_OPTIONS.force!,
		},
		examples: [
			['pullbook cut jobs/bow-rail.json --stock 240', 'saw its pieces from sticks of 240 in'],
			['pullbook cut jobs --stock 6000mm', 'those of every job in the folder'],
			['pullbook cut jobs/bow-rail.json --stock 240x2 --stock 75x1', 'from two sticks and an end that is left'],
			['pullbook cut jobs/bow-rail.json --kerf 1/16', 'from the stick in the job, thin saw'],
			['pullbook cut jobs --stock 240 --out cut-list.pdf', 'on paper, a box to tick for each stick'],
		],
		notes: [
			'A job says how many pieces it wants in its field quantity.',
			'Finished pieces go off the list, and so do those being bent. A scrapped one',
			'is cut again. All of them come off the sticks where you count the sticks.',
			'Other tubes never share a stick: diameter, wall and material must be the same.',
			'Exit code 1: there are too few sticks; the list says what is missing.',
		],
		run: cut,
	},
	paper: {
		summary: 'a PDF: shop sheet and more, or a record',
		operands: ['JOB|ID'],
		least: 1,
		most: 1,
		options: PAPER_OPTIONS,
		examples: PAPER_EXAMPLES,
		notes: PAPER_NOTES,
		run: paper,
	},
	log: {
		summary: 'the sessions kept, newest first, or one of them',
		operands: ['ID', 'ID|DIR'],
		words: {
			last: { says: 'the newest session', next: 'ID' },
			verify: { says: 'read every log: is each line as written?', next: '' },
			export: { says: 'copy all sessions to a folder', next: 'DIR' },
			import: { says: 'copy the sessions of a folder into the home', next: 'DIR' },
		},
		least: 0,
		most: 2,
		options: LOG_OPTIONS,
		examples: LOG_EXAMPLES,
		notes: LOG_NOTES,
		run: log,
	},
	bender: {
		summary: 'benders and dies: list, set up, test piece',
		operands: ['NAME'],
		least: 0,
		most: 1,
		options: { json, ...BENDER_OPTIONS },
		examples: BENDER_EXAMPLES,
		notes: BENDER_NOTES,
		run: bender,
	},
	practice: {
		summary: 'the guided session on a simulated bender',
		operands: ['JOB'],
		least: 1,
		most: 1,
		options: {
			auto: { says: 'play the operator too, and print the session step by step' },
			json: { says: 'with --auto: print one JSON document and nothing else' },
			seed: { value: 'N', says: 'the same N gives the same bender; without it the clock decides' },
			...BENT_AS_OPTIONS,
		},
		examples: [
			['pullbook practice jobs/bow-rail.json', 'bend it on a simulated bender'],
			['pullbook practice jobs/bow-rail.json --auto', 'see a whole session played'],
			['pullbook practice jobs/bow-rail.json --auto --seed 7', 'the same session every time'],
		],
		notes: [
			'What the simulated dial and finder show stands on the page: write it there.',
			'Logs lie in practice/ under the home. No session learns from them.',
			'A practice session that is left cannot be resumed.',
		],
		run: practice,
	},
	completion: {
		summary: 'lets your shell complete jobs, sessions, benders',
		operands: ['SHELL'],
		least: 1,
		most: 1,
		handsOn: true,
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
		run: completion,
	},
	schema: {
		summary: 'the JSON Schema of a document',
		operands: ['DOCUMENT'],
		least: 1,
		most: 1,
		options: {},
		examples: [
			['pullbook schema log', 'of what pullbook log ID --json prints'],
			['pullbook schema layout', 'of what pullbook layout JOB --json prints'],
			['pullbook schema job', 'of a job file, for an editor that checks as you type'],
		],
		run: schema,
	},
	help: {
		summary: 'how to use a command, or a topic below',
		operands: ['TOPIC'],
		least: 0,
		most: 1,
		options: { man: { says: 'the whole help as a manual page' } },
		examples: [
			['pullbook help bend', 'how to start and resume a session'],
			['pullbook help keys', 'every key of the screen'],
			['pullbook help --man', 'all help as a manual page: keep it as pullbook.1'],
		],
		run: help,
	},
};
