import type { KeptBender } from '../../settings/settings.ts';
import { formatLength } from '../../units/format.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import { type BenchPage, benderOf, recordOf } from './bench-page.ts';
import { chosen, HOME, homeOf, to } from './bench-usual.ts';
import { fieldView } from './field-view.ts';
import { DIE_FIELDS, fieldLine, MACHINE_FIELDS } from './field-words.ts';
import { newBenderView, newDieView, radiusView, unitsView } from './new-die-view.ts';
import { pieceView } from './piece-view.ts';

/** The page of the benders that is open, over what is kept of them. */
export function benchView(at: BenchPage, benders: readonly KeptBender[]): HomeView {
	switch (at.bench) {
		case 'list':
			return listView(benders);
		case 'bender':
			return benderView(benders, at.bender);
		case 'die':
			return dieView(benders, at.bender, at.die);
		case 'field':
			return fieldView(benders, at);
		case 'newBender':
			return newBenderView(benders);
		case 'newDie':
			return newDieView(benders, at.bender);
		case 'units':
			return unitsView(at.bender, at.die);
		case 'radius':
			return radiusView(at);
		case 'forget':
			return forgetView(at.bender, at.die);
		case 'piece':
			return pieceView(at.piece);
		case 'more':
			return chosen('More', MORE_CHOICES, to({ bench: 'list' }));
		case 'help':
			return helpView();
	}
}

const MORE_CHOICES: readonly Choice<HomeStep>[] = [
	{ label: 'help', step: to({ bench: 'help' }) },
	{ label: 'the jobs', step: HOME },
];

function listView(benders: readonly KeptBender[]): HomeView {
	const choices: Choice<HomeStep>[] = [
		...benders.map(({ name, dies }) => ({
			group: 'Benders',
			label: `${name}: ${dies.length === 1 ? '1 die' : `${dies.length} dies`}`,
			step: to({ bench: 'bender', bender: name }),
		})),
		{
			group: 'Besides',
			label: benders.length === 0 ? 'set up a bender' : 'set up another bender',
			step: to({ bench: 'newBender' }),
		},
		{ group: 'Besides', label: 'what benders and dies have learned', step: { step: 'learned' } },
	];
	const none =
		'No bender is set up yet. A job can name its die by itself; one that is kept saves typing, and a test piece belongs to it.';
	return {
		...chosen('Benders and dies', choices, HOME),
		body: ({ columns }) => [{ rank: 0, lines: benders.length === 0 ? wrapped(none, columns) : [] }],
	};
}

function benderView(benders: readonly KeptBender[], bender: string): HomeView {
	const record = recordOf(benders, bender, null);
	const choices: Choice<HomeStep>[] = [
		...(benderOf(benders, bender)?.dies ?? []).map(({ name, units, fields }) => ({
			group: 'Dies',
			label: `die ${name}${fields.clr == null ? '' : `, radius ${formatLength(fields.clr, units)}`}`,
			step: to({ bench: 'die', bender, die: name }),
		})),
		{ group: 'Dies', label: 'a further die', step: to({ bench: 'newDie', bender }) },
		...MACHINE_FIELDS.map((field) => ({
			group: 'With every die',
			label: fieldLine(field, record),
			step: to({ bench: 'field', bender, die: null, field }),
		})),
		{ group: 'Besides', label: 'forget this bender', step: to({ bench: 'forget', bender, die: null }) },
	];
	return chosen(`Bender ${bender}`, choices, to({ bench: 'list' }));
}

function dieView(benders: readonly KeptBender[], bender: string, die: string): HomeView {
	const record = recordOf(benders, bender, die);
	const { clr, stretch } = record.fields;
	const piece = { bender, die, units: record.units, clr: clr ?? 0, stretch: stretch ?? 0, given: [] };
	const choices: Choice<HomeStep>[] = [
		...(clr == null
			? []
			: [{ group: 'Besides', label: 'read a test piece: one bend in scrap', step: to({ bench: 'piece', piece }) }]),
		{ group: 'Besides', label: 'forget this die', step: to({ bench: 'forget', bender, die }) },
	];
	const fields = DIE_FIELDS.map((field) => ({
		group: 'Kept of the die',
		label: fieldLine(field, record),
		step: to({ bench: 'field', bender, die, field }),
	}));
	return {
		...chosen(`Die ${die}`, [...fields, ...choices], to({ bench: 'bender', bender })),
		where: `bender ${bender}`,
	};
}

function forgetView(bender: string, die: string | null): HomeView {
	const what = die === null ? `bender ${bender} and its dies` : `die ${die} of bender ${bender}`;
	const next: BenchPage = die === null ? { bench: 'list' } : { bench: 'bender', bender };
	return {
		title: 'Forget it?',
		prompt: {
			label: '',
			plus: {
				label: 'forget it',
				step: { step: 'shop', change: { bender, die, changes: null }, next, said: `Forgotten: ${what}.` },
			},
			back: { label: 'back', step: to(homeOf(bender, die)) },
			empty: 'Press + to forget it, / to go back.',
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(`What is kept of ${what} is forgotten. Logs stay.`, columns, 'alert') },
		],
	};
}

const HELP_TEXT = [
	'What is kept here goes into every job that names the bender and the die and leaves the value out.',
	'A test piece is one bend in scrap: it tells how large the bend really comes out, how far past the index line of the die it begins, and how much the arc stretches. With them marks come out where they belong.',
	'Lengths as 4 1/2, 114.3 mm or 5 - 1/2; angles in degrees.',
] as const;

function helpView(): HomeView {
	return {
		title: 'Help: benders and dies',
		prompt: { label: '', back: { label: 'back', step: to({ bench: 'list' }) }, empty: 'Press / to go back.' },
		body: ({ columns }) => HELP_TEXT.map((text) => ({ rank: 0, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
