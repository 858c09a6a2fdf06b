import { wrongValue } from '../../settings/field-value.ts';
import type { KeptBender } from '../../settings/settings.ts';
import { nameWillDo } from '../../tube/names.ts';
import { formatLength } from '../../units/format.ts';
import { parseLength } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import { dieTitle, NEW } from '../../words/screen/benders.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import { fieldRightWords } from '../../words/settings.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { choicesView } from '../home/plain-views.ts';
import { NotTaken } from '../shell/prompt.ts';
import { line, wrapped } from '../text/line.ts';
import { type BenchPage, benderOf } from './bench-page.ts';
import { toBench } from './bench-usual.ts';

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
			label: NEW.label,
			text: (name) => {
				if (taken.includes(name)) return NEW.taken(name);
				return nameWillDo(name) ? next(name) : NEW.wrong;
			},
			back: { label: KEY_SAYS.back, step: toBench(back) },
			empty: '',
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped(NEW.why, columns, 'quiet') }],
	};
}

export function newBenderView(benders: readonly KeptBender[]): HomeView {
	const taken = benders.map(({ name }) => name);
	return nameView(NEW.bender, taken, (bender) => toBench({ bench: 'newDie', bender }), { bench: 'list' });
}

export function newDieView(benders: readonly KeptBender[], bender: string): HomeView {
	const known = benderOf(benders, bender);
	const taken = (known?.dies ?? []).map(({ name }) => name);
	const view = nameView(
		NEW.die(bender),
		taken,
		(die) => toBench({ bench: 'units', bender, die }),
		known === undefined ? { bench: 'list' } : { bench: 'bender', bender },
	);
	return view;
}

export function unitsView(bender: string, die: string): HomeView {
	const choices = (
		[
			[NEW.inches, 'in'],
			[NEW.millimeters, 'mm'],
		] satisfies [string, Units][]
	).map(([label, units]) => ({ label, step: toBench({ bench: 'radius', bender, die, units }) }));
	return { ...choicesView(dieTitle(die), choices, toBench({ bench: 'newDie', bender })), where: [NEW.units] };
}

export function radiusView({ bender, die, units }: Extract<BenchPage, { bench: 'radius' }>): HomeView {
	return {
		title: dieTitle(die),
		prompt: {
			label: NEW.radius(units),
			read(text) {
				const clr = parseLength(text, units);
				const right = wrongValue('clr', clr, units);
				if (right !== null) throw new NotTaken(text, fieldRightWords(right));
				const next: BenchPage = { bench: 'die', bender, die };
				return {
					step: 'shop',
					change: { bender, die, changes: { units, fields: { clr } } },
					next,
					said: NEW.done(die),
				};
			},
			understood: (text) => formatLength(parseLength(text, units), units),
			back: { label: KEY_SAYS.back, step: toBench({ bench: 'units', bender, die }) },
			empty: NEW.radiusEmpty,
		},
		body: () => [{ rank: 0, lines: [line(NEW.radiusHelp, 'quiet')] }],
	};
}
