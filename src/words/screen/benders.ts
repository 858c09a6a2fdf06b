import type { KeptDie } from '../../settings/settings-file.ts';
import type { KeptRecord } from '../../tube/kept-tooling.ts';
import { type FieldName, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { capital, formatLength, formatQuantity } from '../../units/format.ts';
import { counted } from '../counted.ts';
import { inWhat } from '../job-form/pages.ts';
import { NAME_RIGHT } from '../settings.ts';
import { FIELD_WORDS } from '../tooling-fields.ts';
import { BENDERS_TITLE } from './home.ts';

/** What the pages of benders and dies say. */

export const BENDERS_LIST = {
	title: BENDERS_TITLE,
	benders: 'Benders',
	bender: (name: string, dies: number): string => `${name}: ${counted(dies, 'die')}`,
	setUp: (benders: number): string => (benders === 0 ? 'set up a bender' : 'set up another bender'),
	learned: 'what benders and dies have learned',
	none: 'No bender is set up yet. A job can name its die by itself; one that is kept saves typing, and a test piece belongs to it.',
} as const;

export const benderTitle = (bender: string): string => `Bender ${bender}`;
export const dieTitle = (die: string): string => `Die ${die}`;
export const ofBender = (bender: string): string => `bender ${bender}`;
export const ofDie = (bender: string, die: string): string => `${bender}, die ${die}`;

export const BENDER = {
	dies: 'Dies',
	die: ({ name, units, fields }: KeptDie): string =>
		`die ${name}${fields.clr == null ? '' : `, radius ${formatLength(fields.clr, units)}`}`,
	further: 'a further die',
	withEvery: 'With every die',
	forget: 'forget this bender',
} as const;

export const DIE = {
	kept: 'Kept of the die',
	piece: 'read a test piece: one bend in scrap',
	forget: 'forget this die',
} as const;

const what = (bender: string, die: string | null): string =>
	die === null ? `bender ${bender} and its dies` : `die ${die} of bender ${bender}`;

export const FORGET = {
	title: 'Forget it?',
	plus: 'forget it',
	empty: 'Press + to forget it, / to go back.',
	ask: (bender: string, die: string | null): string => `What is kept of ${what(bender, die)} is forgotten. Logs stay.`,
	done: (bender: string, die: string | null): string => `Forgotten: ${what(bender, die)}.`,
} as const;

/** A figure that is kept, with its value in `units`. */
export const FIELD = {
	row: (field: FieldName, { units, fields }: KeptRecord): string => {
		const value = fields[field];
		return `${FIELD_WORDS[field].says}: ${value == null ? 'not set' : FIELD.value(field, value, units)}`;
	},
	label: (field: FieldName, units: KeptRecord['units']): string =>
		inWhat(capital(FIELD_WORDS[field].says), TOOLING_FIELDS[field].kind, units),
	value: (field: FieldName, value: number, units: KeptRecord['units']): string =>
		formatQuantity(value, TOOLING_FIELDS[field].kind, units),
	now: (field: FieldName, value: number, units: KeptRecord['units']): string =>
		`Kept now: ${FIELD.value(field, value, units)}`,
	kept: (field: FieldName, value: number | null, units: KeptRecord['units']): string =>
		value === null
			? `Forgotten: ${FIELD_WORDS[field].says}.`
			: `Kept: ${FIELD_WORDS[field].says}, ${FIELD.value(field, value, units)}.`,
	empty: 'Write the number and press Enter; / goes back.',
} as const;

export const NEW = {
	bender: 'Another bender',
	die: (bender: string): string => `A die of bender ${bender}`,
	label: 'What it is called',
	why: 'Jobs name it so, and springback is learned under that name.',
	taken: (name: string): string => `${name} is set up already; write another name, or / to go back.`,
	wrong: `Write ${NAME_RIGHT}; / goes back.`,
	units: 'its lengths are given in',
	inches: 'inches',
	millimeters: 'millimeters',
	radius: (units: string): string => `Center-line radius of the die, ${units}`,
	radiusHelp: 'From the center of the die to the center line of the tube.',
	radiusEmpty: 'Write the radius and press Enter; / goes back.',
	done: (die: string): string => `Die ${die} is set up.`,
} as const;

export const BENDERS_HELP = {
	title: 'Help: benders and dies',
	said: [
		'What is kept here goes into every job that names the bender and the die and leaves the value out.',
		'A test piece is one bend in scrap: it tells how large the bend really comes out, how far past the index line of the die it begins, and how much the arc stretches. With them marks come out where they belong.',
		'Lengths as 4 1/2, 114.3 mm or 5 - 1/2; angles in degrees.',
	],
} as const;
