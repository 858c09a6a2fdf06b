import { FIELDS, wrongName, wrongValue } from '../../settings/fields.ts';
import type { KeptBender } from '../../settings/settings.ts';
import { formatLength } from '../../units/format.ts';
import { parseAngle, parseLength, parseNumber } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import { UnitsError } from '../../units/units-error.ts';
import type { HomeStep, HomeView } from '../home-view.ts';
import { line, wrapped } from '../line.ts';
import type { Choice } from '../prompt.ts';
import { type BenchPage, benderOf, recordOf } from './bench-page.ts';
import { DIE_FIELDS, FIELD_WORDS, fieldLine, MACHINE_FIELDS, valueWords } from './field-words.ts';
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
		case 'help':
			return helpView();
	}
}

function to(at: BenchPage): HomeStep {
	return { step: 'bench', at };
}

const HOME: HomeStep = { step: 'page', page: { page: 'home' } };
const CHOOSE = 'Write the number of a choice and press Enter; / goes back.';
const HELP = { label: 'help', step: to({ bench: 'help' }) } as const;

function chosen(title: string, choices: readonly Choice<HomeStep>[], back: HomeStep): HomeView {
	return {
		title,
		prompt: { label: 'Number of your choice', choices, star: HELP, back: { label: 'back', step: back }, empty: CHOOSE },
		body: () => [],
	};
}

function listView(benders: readonly KeptBender[]): HomeView {
	const choices: Choice<HomeStep>[] = [
		...benders.map(({ name, dies }) => ({
			group: 'Benders',
			label: `${name}: ${dies.length === 1 ? '1 die' : `${dies.length} dies`}`,
			step: to({ bench: 'bender', bender: name }),
		})),
		{ group: 'Besides', label: 'set up another bender', step: to({ bench: 'newBender' }) },
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

function homeOf(bender: string, die: string | null): BenchPage {
	return die === null ? { bench: 'bender', bender } : { bench: 'die', bender, die };
}

function fieldView(benders: readonly KeptBender[], at: Extract<BenchPage, { bench: 'field' }>): HomeView {
	const { bender, die, field } = at;
	const { units, fields } = recordOf(benders, bender, die);
	const { kind } = FIELDS[field];
	const known = fields[field];
	const parse = (text: string) =>
		kind === 'length' ? parseLength(text, units) : kind === 'angle' ? parseAngle(text) : parseNumber(text);
	const kept = (value: number | null): HomeStep => ({
		step: 'shop',
		change: { bender, die, changes: { units, fields: { [field]: value } } },
		next: homeOf(bender, die),
		said:
			value === null
				? `Forgotten: ${FIELD_WORDS[field]}.`
				: `Kept: ${FIELD_WORDS[field]}, ${valueWords(field, value, units)}.`,
	});
	const unit = kind === 'length' ? `, ${units}` : kind === 'angle' ? ', degrees' : '';
	return {
		title: die === null ? `Bender ${bender}` : `Die ${die}`,
		prompt: {
			label: `${FIELD_WORDS[field][0]!.toUpperCase()}${FIELD_WORDS[field].slice(1)}${unit}`,
			read(text) {
				const value = parse(text);
				const right = wrongValue(field, value);
				if (right !== null) throw new UnitsError(text, right);
				return kept(value);
			},
			understood: (text) => valueWords(field, parse(text), units),
			...(known == null ? {} : { plus: { label: 'forget it', step: kept(null) } }),
			back: { label: 'back', step: to(homeOf(bender, die)) },
			empty: 'Write the number and press Enter; / goes back.',
		},
		body: () => [{ rank: 0, lines: known == null ? [] : [line(`Kept now: ${valueWords(field, known, units)}`)] }],
	};
}

function nameView(
	title: string,
	taken: readonly string[],
	next: (name: string) => HomeStep,
	back: BenchPage,
): HomeView {
	return {
		title,
		prompt: {
			label: 'What it is called',
			text: (name) => {
				if (taken.includes(name)) return `${name} is set up already; write another name, or / to go back.`;
				const right = wrongName(name);
				return right === null ? next(name) : `Write ${right}; / goes back.`;
			},
			back: { label: 'back', step: to(back) },
			empty: '',
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped('Jobs name it so, and springback is learned under that name.', columns, 'quiet') },
		],
	};
}

function newBenderView(benders: readonly KeptBender[]): HomeView {
	const taken = benders.map(({ name }) => name);
	return nameView('Another bender', taken, (bender) => to({ bench: 'newDie', bender }), { bench: 'list' });
}

function newDieView(benders: readonly KeptBender[], bender: string): HomeView {
	const known = benderOf(benders, bender);
	const taken = (known?.dies ?? []).map(({ name }) => name);
	const view = nameView(
		`A die of bender ${bender}`,
		taken,
		(die) => to({ bench: 'units', bender, die }),
		known === undefined ? { bench: 'list' } : { bench: 'bender', bender },
	);
	return view;
}

function unitsView(bender: string, die: string): HomeView {
	const choices = (
		[
			['inches', 'in'],
			['millimetres', 'mm'],
		] satisfies [string, Units][]
	).map(([label, units]) => ({ label, step: to({ bench: 'radius', bender, die, units }) }));
	return { ...chosen(`Die ${die}`, choices, to({ bench: 'newDie', bender })), where: 'its lengths are given in' };
}

function radiusView({ bender, die, units }: Extract<BenchPage, { bench: 'radius' }>): HomeView {
	return {
		title: `Die ${die}`,
		prompt: {
			label: `Centre-line radius of the die, ${units}`,
			read(text) {
				const clr = parseLength(text, units);
				const right = wrongValue('clr', clr);
				if (right !== null) throw new UnitsError(text, right);
				const next: BenchPage = { bench: 'die', bender, die };
				return {
					step: 'shop',
					change: { bender, die, changes: { units, fields: { clr } } },
					next,
					said: `Die ${die} is set up.`,
				};
			},
			understood: (text) => formatLength(parseLength(text, units), units),
			back: { label: 'back', step: to({ bench: 'units', bender, die }) },
			empty: 'Write the radius and press Enter; / goes back.',
		},
		body: () => [{ rank: 0, lines: [line('From the centre of the die to the centre line of the tube.', 'quiet')] }],
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
