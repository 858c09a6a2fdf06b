import type { CommandWords } from './command-words.ts';
import { JSON_WORDS } from './options.ts';

/** The commands about what is kept in the home. */
export const OF_HOME = {
	log: {
		summary: 'the sessions kept, newest first, or one of them',
		options: {
			...JSON_WORDS,
			csv: 'comma-separated values: a row a session, or a pull of ID',
			find: 'those with all words in job, bender, die, heat or date',
			since: 'those begun then or later: 2026-10-01, or 2026-10',
			bender: 'those on that bender',
			fits: 'finished tubes that fit, or do not surely fit',
			trend: 'springback and error over the sessions',
			rescue: 'look in DIR too, where a session went on',
		},
		words: {
			last: 'the newest session',
			verify: 'read every log: is each line as written?',
			export: 'copy all sessions to a folder',
			import: 'copy the sessions of a folder into the home',
		},
		examples: [
			['pullbook log', 'list the sessions'],
			['pullbook log last', 'show the newest one, pull by pull'],
			['pullbook log ID', 'show another; the start of its id will do'],
			['pullbook log ID --json', 'the same for another program'],
			['pullbook log ID ID', 'two sessions of one job side by side'],
			['pullbook log --find "rail shop"', 'list those that have both words'],
			['pullbook log --csv', 'the list as pullbook help tables has it'],
			['pullbook log --trend', 'has the bender changed?'],
			['pullbook log verify', 'read every log: is each line as written?'],
			['pullbook log export /media/stick', 'copy all sessions there'],
			['pullbook log import /media/stick', 'copy the sessions there into the home'],
		],
		notes: [
			'Export and import copy what is missing, and nothing twice. Do both, on each',
			'bench, with one shared folder: then each learns from the tubes of the others.',
			'A damaged log is left out and named. So is one of a later version.',
		],
	},
	/** Its further options are the figures of the tooling, which have words of their own. */
	bender: {
		summary: 'benders and dies: list, set up, test piece',
		options: {
			...JSON_WORDS,
			die: 'the die; without it the bender, whatever the die',
			units: 'in or mm, for lengths written without a unit',
			remove: 'forget the set-up of the die, or of the whole bender',
			forget: 'what was learned until now does not count; logs stay',
			remember: 'take the last --forget back',
			'test-angle': 'test piece, one bend in scrap: its angle',
			'test-od': 'test piece: outside diameter',
			'test-before': 'test piece: its length before it was bent',
			'test-mark': 'test piece: start end to the mark at the index line',
			'test-start-leg': 'test piece: start end to the outside corner',
			'test-far-leg': 'test piece: far end to the outside corner',
			'test-straight': 'test piece: start end to where the bend begins',
			keep: 'keep with the die what the test piece told',
		},
		examples: [
			['pullbook bender', 'benders, dies and what was learned'],
			['pullbook bender shop --max-angle 120', 'the dial ends at 120 with every die'],
			['pullbook bender shop --die five --clr 5 --clamp 4', 'set up a die, or change it'],
			['pullbook bender shop --die five --floor none', 'forget one value'],
			['pullbook bender shop --die five --remove', "forget the die's set-up"],
			['pullbook bender shop --die five --forget', 'the die was changed: learn it again'],
		],
		notes: [
			'A test piece: bend scrap once, best to 110° or more; lay straight edges along',
			'the outside of both legs; read each leg from its end to where the edges cross.',
			'All --test options are needed but --test-straight, which tells stretch as well.',
		],
	},
} as const satisfies Record<string, CommandWords>;
