import { HOME_WORDS } from '../words/commands/index.ts';
import { COMMON_WORDS } from '../words/commands/options.ts';
import { FIGURE_OPTIONS } from './bender-options.ts';
import type { CommandSpec, OptionSpec } from './command.ts';
import { BENT_AS_OPTIONS } from './hand-and-end.ts';
import { RUNS } from './runs.ts';
import { optionsWorded, worded } from './worded.ts';

/** Taken by every command. */
export const COMMON_OPTIONS: Readonly<Record<string, OptionSpec>> = optionsWorded(
	{ home: { value: 'DIR' }, ascii: {}, 'no-color': {}, debug: {}, help: {}, version: {} },
	COMMON_WORDS,
);

/** What `pullbook` without a command does. */
export const HOME_COMMAND: CommandSpec = {
	...HOME_WORDS,
	operands: ['FOLDER'],
	least: 0,
	most: 1,
	options: {},
	run: RUNS.home,
};

const ONE = { least: 1, most: 1 } as const;
const ONE_OR_MORE = { least: 1, most: Number.POSITIVE_INFINITY } as const;

/** Every command: what it takes and what it does. Its words stand in `words/commands/`. */
export const COMMANDS: Readonly<Record<string, CommandSpec>> = {
	bend: worded('bend', {
		operands: ['JOB'],
		...ONE,
		options: {
			lines: {},
			resume: { value: 'ID', optional: true },
			rescue: { value: 'DIR' },
			'no-learn': {},
			...BENT_AS_OPTIONS,
		},
		run: RUNS.bend,
	}),
	layout: worded('layout', {
		operands: ['JOB'],
		...ONE,
		options: { json: {}, chalk: {}, 'no-learn': {}, ...BENT_AS_OPTIONS },
		run: RUNS.layout,
	}),
	check: worded('check', { operands: ['JOB'], ...ONE_OR_MORE, options: { json: {} }, run: RUNS.check }),
	cut: worded('cut', {
		operands: ['JOB'],
		...ONE_OR_MORE,
		options: {
			stock: { value: 'LENGTH[xN]', repeats: true },
			kerf: { value: 'LENGTH' },
			now: {},
			json: {},
			csv: {},
			out: { value: 'FILE' },
			page: { value: 'SIZE' },
			force: {},
		},
		run: RUNS.cut,
	}),
	paper: worded('paper', {
		operands: ['JOB|ID'],
		...ONE,
		options: {
			out: { value: 'FILE' },
			parts: { value: 'PARTS' },
			page: { value: 'SIZE' },
			force: {},
			...BENT_AS_OPTIONS,
		},
		run: RUNS.paper,
	}),
	log: worded('log', {
		operands: ['ID', 'ID|DIR'],
		next: { last: 'ID', verify: '', export: 'DIR', import: 'DIR' },
		least: 0,
		most: 2,
		options: {
			json: {},
			csv: {},
			find: { value: 'WORDS' },
			since: { value: 'DATE' },
			bender: { value: 'NAME' },
			fits: { value: 'yes|no' },
			trend: { value: 'JOB|BENDER', optional: true },
			rescue: { value: 'DIR' },
		},
		run: RUNS.log,
	}),
	bender: worded('bender', {
		operands: ['NAME'],
		least: 0,
		most: 1,
		options: {
			json: {},
			die: { value: 'DIE' },
			units: { value: 'UNIT' },
			...FIGURE_OPTIONS,
			remove: {},
			forget: {},
			remember: {},
			'test-angle': { value: 'ANGLE' },
			'test-od': { value: 'LENGTH' },
			'test-before': { value: 'LENGTH' },
			'test-mark': { value: 'LENGTH' },
			'test-start-leg': { value: 'LENGTH' },
			'test-far-leg': { value: 'LENGTH' },
			'test-straight': { value: 'LENGTH' },
			keep: {},
		},
		run: RUNS.bender,
	}),
	practice: worded('practice', {
		operands: ['JOB'],
		...ONE,
		options: { auto: {}, json: {}, seed: { value: 'N' }, ...BENT_AS_OPTIONS },
		run: RUNS.practice,
	}),
	completion: worded('completion', { operands: ['SHELL'], ...ONE, handsOn: true, options: {}, run: RUNS.completion }),
	schema: worded('schema', { operands: ['DOCUMENT'], ...ONE, options: {}, run: RUNS.schema }),
	help: worded('help', { operands: ['TOPIC'], least: 0, most: 1, options: { man: {} }, run: RUNS.help }),
};
