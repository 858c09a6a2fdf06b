import type { KeptBender } from '../../settings/settings.ts';
import { DIE_FIELDS, MACHINE_FIELDS } from '../../tube/tooling-fields.ts';
import {
	BENDER,
	BENDERS_HELP,
	BENDERS_LIST,
	benderTitle,
	DIE,
	dieTitle,
	FIELD,
	FORGET,
	ofBender,
} from '../../words/screen/benders.ts';
import { BESIDES, KEY_SAYS, MORE_TITLE, TO_THE_JOBS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { choicesView, helpView } from '../home/plain-views.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import { type BenchPage, benderOf, keptRecordOf } from './bench-page.ts';
import { benchPageOf, TO_JOBS, toBench, withKeys } from './bench-usual.ts';
import { fieldView } from './field-view.ts';
import { newBenderView, newDieView, radiusView, unitsView } from './new-die-view.ts';
import { pieceView } from './piece-view.ts';

/** The page of the benders that is open, over what is kept of them. */
export function benchView(at: BenchPage, benders: readonly KeptBender[]): HomeView {
	return withKeys(at, benchPageView(at, benders));
}

function benchPageView(at: BenchPage, benders: readonly KeptBender[]): HomeView {
	switch (at.bench) {
		case 'list':
			return benderListView(benders);
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
			return benchMoreView(at);
		case 'help':
			return helpView(BENDERS_HELP, toBench(at.from));
	}
}

function benderListView(benders: readonly KeptBender[]): HomeView {
	const choices: Choice<HomeStep>[] = [
		...benders.map(({ name, dies }) => ({
			group: BENDERS_LIST.benders,
			label: BENDERS_LIST.bender(name, dies.length),
			step: toBench({ bench: 'bender', bender: name }),
		})),
		{
			group: BESIDES,
			label: BENDERS_LIST.setUp(benders.length),
			step: toBench({ bench: 'newBender' }),
		},
		{ group: BESIDES, label: BENDERS_LIST.learned, step: { step: 'learned' } },
	];
	return {
		...choicesView(BENDERS_LIST.title, choices, TO_JOBS),
		body: ({ columns }) => [{ rank: 0, lines: benders.length === 0 ? wrapped(BENDERS_LIST.none, columns) : [] }],
	};
}

function benderView(benders: readonly KeptBender[], bender: string): HomeView {
	const record = keptRecordOf(benders, bender, null);
	const choices: Choice<HomeStep>[] = [
		...(benderOf(benders, bender)?.dies ?? []).map((die) => ({
			group: BENDER.dies,
			label: BENDER.die(die),
			step: toBench({ bench: 'die', bender, die: die.name }),
		})),
		{ group: BENDER.dies, label: BENDER.further, step: toBench({ bench: 'newDie', bender }) },
		...MACHINE_FIELDS.map((field) => ({
			group: BENDER.withEvery,
			label: FIELD.row(field, record),
			step: toBench({ bench: 'field', bender, die: null, field }),
		})),
		{ group: BESIDES, label: BENDER.forget, step: toBench({ bench: 'forget', bender, die: null }) },
	];
	return choicesView(benderTitle(bender), choices, toBench({ bench: 'list' }));
}

function dieView(benders: readonly KeptBender[], bender: string, die: string): HomeView {
	const record = keptRecordOf(benders, bender, die);
	const { clr, stretch } = record.fields;
	const piece = { bender, die, units: record.units, clr: clr ?? 0, stretch: stretch ?? 0, given: [] };
	const choices: Choice<HomeStep>[] = [
		...(clr == null ? [] : [{ group: BESIDES, label: DIE.piece, step: toBench({ bench: 'piece', piece }) }]),
		{ group: BESIDES, label: DIE.forget, step: toBench({ bench: 'forget', bender, die }) },
	];
	const fields = DIE_FIELDS.map((field) => ({
		group: DIE.kept,
		label: FIELD.row(field, record),
		step: toBench({ bench: 'field', bender, die, field }),
	}));
	return {
		...choicesView(dieTitle(die), [...fields, ...choices], toBench({ bench: 'bender', bender })),
		where: [ofBender(bender)],
	};
}

function forgetView(bender: string, die: string | null): HomeView {
	const next: BenchPage = die === null ? { bench: 'list' } : { bench: 'bender', bender };
	return {
		title: FORGET.title,
		prompt: {
			label: '',
			plus: {
				label: FORGET.plus,
				step: { step: 'shop', change: { bender, die, changes: null }, next, said: FORGET.done(bender, die) },
			},
			back: { label: KEY_SAYS.back, step: toBench(benchPageOf(bender, die)) },
			empty: FORGET.empty,
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped(FORGET.ask(bender, die), columns, 'alert') }],
	};
}

function benchMoreView(at: Extract<BenchPage, { bench: 'more' | 'help' }>): HomeView {
	const choices: readonly Choice<HomeStep>[] = [
		{ label: KEY_SAYS.help, step: toBench({ bench: 'help', from: at }) },
		{ label: TO_THE_JOBS, step: TO_JOBS },
	];
	return choicesView(MORE_TITLE, choices, toBench(at.from));
}
