import { wrongValue } from '../../settings/fields.ts';
import type { KeptBender } from '../../settings/settings.ts';
import { nameWillDo } from '../../tube/names.ts';
import { formatLength } from '../../units/format.ts';
import { parseLength } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import { UnitsError } from '../../units/units-error.ts';
import { fieldRightWords, NAME_RIGHT } from '../../words/settings.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { line, wrapped } from '../text/line.ts';
import { type BenchPage, benderOf } from './bench-page.ts';
import { chosen, to } from './bench-usual.ts';

/** The questions by which a bender and its first die, or a further die, are set up. */

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
				return nameWillDo(name) ? next(name) : `Write ${NAME_RIGHT}; / goes back.`;
			},
			back: { label: 'back', step: to(back) },
			empty: '',
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped('Jobs name it so, and springback is learned under that name.', columns, 'quiet') },
		],
	};
}

export function newBenderView(benders: readonly KeptBender[]): HomeView {
	const taken = benders.map(({ name }) => name);
	return nameView('Another bender', taken, (bender) => to({ bench: 'newDie', bender }), { bench: 'list' });
}

export function newDieView(benders: readonly KeptBender[], bender: string): HomeView {
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

export function unitsView(bender: string, die: string): HomeView {
	const choices = (
		[
			['inches', 'in'],
			['millimeters', 'mm'],
		] satisfies [string, Units][]
	).map(([label, units]) => ({ label, step: to({ bench: 'radius', bender, die, units }) }));
	return { ...chosen(`Die ${die}`, choices, to({ bench: 'newDie', bender })), where: 'its lengths are given in' };
}

export function radiusView({ bender, die, units }: Extract<BenchPage, { bench: 'radius' }>): HomeView {
	return {
		title: `Die ${die}`,
		prompt: {
			label: `Center-line radius of the die, ${units}`,
			read(text) {
				const clr = parseLength(text, units);
				const right = wrongValue('clr', clr, units);
				if (right !== null) throw new UnitsError(text, fieldRightWords(right));
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
		body: () => [{ rank: 0, lines: [line('From the center of the die to the center line of the tube.', 'quiet')] }],
	};
}
