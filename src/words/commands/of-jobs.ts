import type { CommandWords } from './command-words.ts';
import { BENT_AS_OPTION_WORDS, JSON_WORDS, PDF_WORDS } from './options.ts';

/** The commands that take a job. */
export const OF_JOBS = {
	bend: {
		summary: 'the guided session: bend a tube, pull by pull',
		options: {
			lines: 'ask and take answers as JSON lines, without a screen',
			resume: 'go on with the unfinished session, or session ID',
			rescue: 'go on in DIR when the disk refuses, or went on there',
			'no-learn': 'neither use nor keep what sessions teach',
			...BENT_AS_OPTION_WORDS,
		},
		examples: [
			['pullbook bend jobs/bow-rail.json', 'bend the tube on the screen'],
			['pullbook bend jobs/bow-rail.json --resume', 'go on where the last session stopped'],
			['pullbook bend jobs/bow-rail.json --lines', 'the same session as JSON lines, for a pipe'],
		],
		notes: ['A session left with exit code 3 is kept: --resume asks its open question again.'],
	},
	layout: {
		summary: 'marks, cut length, checks and warnings',
		options: {
			...JSON_WORDS,
			chalk: 'points of the center line to chalk on the bench, plane by plane',
			'no-learn': 'take the radius from the strength of the tube alone',
			...BENT_AS_OPTION_WORDS,
		},
		examples: [
			['pullbook layout jobs/bow-rail.json', 'print the table to take to the tube'],
			['pullbook layout jobs/bow-rail.json --json', 'the same, unrounded, for another program'],
			['pullbook layout jobs/bow-rail.json --chalk', 'what to draw on the bench, full size'],
			['pullbook layout jobs/mast-brace.json --mirror', 'the brace for the other side'],
			['pullbook layout jobs/mast-brace.json --from far', 'the same tube, begun at its far end'],
		],
	},
	check: {
		summary: 'say every fault of job files at once',
		options: JSON_WORDS,
		examples: [
			['pullbook check jobs/bow-rail.json', 'check one file'],
			['pullbook check jobs/*.json', 'check a folder'],
		],
		notes: ['Exit code 0 when every file is right, 2 when one is not.'],
	},
	cut: {
		summary: 'which pieces from which sticks, with saw marks',
		options: {
			stock: 'sticks of this length, N of them; else as many as needed',
			kerf: 'what the saw takes of the tube; 1/8 in or 3 mm without it',
			now: 'count the sticks as they lie in the rack now',
			...JSON_WORDS,
			csv: 'print comma-separated values, a row a piece',
			out: 'write a PDF for the saw; - is standard output',
			...PDF_WORDS,
		},
		examples: [
			['pullbook cut jobs/bow-rail.json --stock 240', 'cut its pieces from sticks of 240 in'],
			['pullbook cut jobs --stock 6000mm', 'those of every job in the folder'],
			['pullbook cut jobs/bow-rail.json --stock 240x2 --stock 75x1', 'from two sticks and an end that is left'],
			['pullbook cut jobs/bow-rail.json --kerf 1/16', 'from the stick in the job, thin saw'],
			['pullbook cut jobs --stock 240in --out cut-list.pdf', 'on paper, a box to tick for each stick'],
		],
		notes: [
			'A job says how many pieces it wants in its field quantity.',
			'Finished pieces go off the list, and so do those being bent. A scrapped one',
			'is cut again. A count of sticks, as in 240x2, is from before the first piece:',
			'what was cut since is taken off. With --now nothing is.',
			'Other tubes never share a stick: diameter, wall and material must be the same.',
			'Exit code 1: there are too few sticks; the list says what is missing.',
		],
	},
	paper: {
		summary: 'a PDF: shop sheet and more, or a record',
		options: {
			out: 'write it there; - sends it to standard output',
			parts: 'what to print: sheet, profile, wraps, copes (commas between)',
			...PDF_WORDS,
			...BENT_AS_OPTION_WORDS,
		},
		examples: [
			['pullbook paper jobs/bow-rail.json', 'write jobs/bow-rail-sheet.pdf'],
			['pullbook paper jobs/bow-rail.json --page a4', 'the same on A4'],
			['pullbook paper jobs/bow-rail.json --parts profile,wraps', 'full-size profile and wrap strips'],
			['pullbook paper last', 'record of the newest session'],
			['pullbook paper jobs/bow-rail.json --out -', 'to standard output, for a printer'],
		],
		notes: [
			'Print at full size: 100 %, not "fit to page".',
			'Exit code 5: the disk did not take the file. Nothing was left half written.',
		],
	},
	practice: {
		summary: 'the guided session on a simulated bender',
		options: {
			auto: 'play the operator too, and print the session step by step',
			json: 'with --auto: print one JSON document and nothing else',
			seed: 'the same N gives the same bender; without it the clock decides',
			...BENT_AS_OPTION_WORDS,
		},
		examples: [
			['pullbook practice jobs/bow-rail.json', 'bend it on a simulated bender'],
			['pullbook practice jobs/bow-rail.json --auto', 'see a whole session played'],
			['pullbook practice jobs/bow-rail.json --auto --seed 7', 'the same session every time'],
		],
		notes: [
			'The page shows what the simulated dial and angle finder read. Type it in.',
			'Logs lie in practice/ under the home. No real session learns from them.',
			'A job of several pieces goes on to the next one on the same bender.',
			'A practice session that is left cannot be resumed.',
		],
	},
} as const satisfies Record<string, CommandWords>;
