/** The figures of a job's tooling: what job file, job form and kept benders know of each stands here and nowhere else; their words in `words/`. */
import type { Quantity } from '../units/parse.ts';
import type { Range } from '../units/range.ts';
import { BOUNDS } from './bounds.ts';
import type { DieFields, Tooling, Units } from './job.ts';

export type FieldName = Exclude<keyof Tooling, 'bender' | 'die' | 'dies'>;

export interface ToolingField {
	kind: Quantity;
	/** What it may be: lengths in mm, angles in degrees. */
	range: Range;
	/** Whether it is kept with a die, with a machine whatever the die, or with either. */
	with: readonly ('machine' | 'die')[];
	/** What holds where neither job nor bender nor die has it; undefined: it must be given. */
	usual(units: Units): number | null | undefined;
}

const none = () => 0;

export const TOOLING_FIELDS: Readonly<Record<FieldName, ToolingField>> = {
	clr: {
		kind: 'length',
		range: BOUNDS.radius,
		with: ['die'],
		usual: () => undefined,
	},
	growth: {
		kind: 'number',
		range: BOUNDS.growth,
		with: ['die'],
		usual: () => null,
	},
	stretch: {
		kind: 'number',
		range: BOUNDS.stretch,
		with: ['die'],
		usual: none,
	},
	markOffset: {
		kind: 'length',
		range: BOUNDS.markOffset,
		with: ['die'],
		usual: none,
	},
	clamp: {
		kind: 'length',
		range: BOUNDS.holding,
		with: ['die'],
		usual: none,
	},
	follow: {
		kind: 'length',
		range: BOUNDS.holding,
		with: ['die'],
		usual: none,
	},
	maxAngle: {
		kind: 'angle',
		range: BOUNDS.maxAngle,
		with: ['machine', 'die'],
		usual: () => 180,
	},
	dialStep: {
		kind: 'angle',
		range: BOUNDS.dialStep,
		with: ['machine'],
		usual: () => 0.5,
	},
	tape: {
		kind: 'length',
		range: BOUNDS.tape,
		with: ['machine'],
		usual: (units) => (units === 'in' ? 1 / 16 : 1),
	},
	floor: {
		kind: 'length',
		range: BOUNDS.floor,
		with: ['machine', 'die'],
		usual: () => null,
	},
};

/** In the order in which they are shown. */
export const FIELD_NAMES = Object.keys(TOOLING_FIELDS) as FieldName[];

/** Those that hold with every die of a machine, and those of a die; some may be said of either. */
export const MACHINE_FIELDS = FIELD_NAMES.filter((field) => TOOLING_FIELDS[field].with.includes('machine'));
export const DIE_FIELDS = FIELD_NAMES.filter((field): field is keyof DieFields =>
	TOOLING_FIELDS[field].with.includes('die'),
);
