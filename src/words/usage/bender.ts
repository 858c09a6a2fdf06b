import type { FieldRight } from '../../settings/facts.ts';
import { fieldRightWords, NAME_RIGHT } from '../settings.ts';

/** What `pullbook bender` is told wrong. */
export const BENDER_USAGE = {
	name: 'Name the bender that this is about: pullbook bender NAME …',
	units: (given: string): string => `--units is in or mm, but "${given}" stands there.`,
	noName: (place: string, given: string): string => `${place} cannot be ${JSON.stringify(given)}; write ${NAME_RIGHT}.`,
	noFigure: (option: string, given: string, right: FieldRight): string =>
		`--${option} cannot be ${given}; write ${fieldRightWords(right)}, or none.`,
	alone: (option: string): string => `--${option} goes with --die alone: nothing else can be done in the same run.`,
	noBender: (bender: string, setUp: readonly string[]): string =>
		`There is no bender "${bender}". ${setUp.length > 0 ? `Set up: ${inQuotes(setUp)}.` : 'None is set up.'} To set one up: pullbook bender ${bender} --die DIE --clr LENGTH`,
	noDie: (bender: string, die: string, dies: readonly string[]): string =>
		`Bender "${bender}" has no die "${die}". ${dies.length > 0 ? `Its dies are ${inQuotes(dies)}.` : 'It has none.'}`,
	/** `dies`: those that something is forgotten of; `whole`: the bender as a whole is. */
	nothingForgotten: (bender: string, die: string | null, dies: readonly string[], whole: boolean): string => {
		const elsewhere = [
			...(whole ? ['The bender as a whole is: leave --die out.'] : []),
			...(dies.length > 0 ? [`Forgotten of its dies: ${inQuotes(dies)}; name one with --die.`] : []),
		];
		return [`Nothing that was learned with ${whose(bender, die)} is forgotten.`, ...elsewhere].join(' ');
	},
} as const;

/** What `pullbook bender` did. */
export const BENDER_DONE = {
	forgotten: (bender: string, what: string): string => `Bender ${bender}, ${what}`,
	remembered: (bender: string, die: string | null, partly: boolean): string =>
		`What was learned with ${whose(bender, die)} counts again${partly ? ', as far as the page below says' : ''}.`,
	removed: (bender: string): string => `Bender "${bender}" and its dies are forgotten.`,
	dieRemoved: (bender: string, die: string): string => `Die "${die}" of bender "${bender}" is forgotten.`,
	notKept: 'Nothing is kept yet; --keep keeps it.',
} as const;

/** What a test piece is told wrong by options. */
export const PIECE_USAGE = {
	noDie: 'A test piece tells of a die: name it with --die DIE.',
	noRadius: 'A test piece needs the radius of the die: --die DIE --clr LENGTH.',
	missing: (options: readonly string[]): string => `The test piece lacks ${options.join(', ')}.`,
	angle: (given: number): string => `--test-angle cannot be ${given}; write an angle above 0 and below 180.`,
} as const;

const inQuotes = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

function whose(bender: string, die: string | null): string {
	return die === null ? `bender "${bender}" as a whole` : `die "${die}" of bender "${bender}"`;
}
