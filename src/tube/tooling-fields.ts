/** The figures of a job's tooling: what job file, job form, kept benders and help know of each stands here and nowhere else. */
import type { Quantity } from '../units/parse.ts';
import type { Range } from '../units/range.ts';
import { BOUNDS } from './bounds.ts';
import type { Tooling, Units } from './job.ts';

export type FieldName = Exclude<keyof Tooling, 'bender' | 'die' | 'dies'>;

export interface ToolingField {
	kind: Quantity;
	/** What it may be: lengths in mm, angles in degrees. */
	range: Range;
	/** What it is, to stand after `the`. */
	says: string;
	/** Whether it is kept with a die, with a machine whatever the die, or with either. */
	with: readonly ('machine' | 'die')[];
	/** What holds where neither job nor bender nor die has it; undefined: it must be given. */
	usual(units: Units): number | null | undefined;
	/** The same in words. */
	without: string;
	/** A sentence more, where one helps. */
	help?: string;
}

const TEST_PIECE = 'A test piece tells it.';
const none = () => 0;

export const TOOLING_FIELDS: Readonly<Record<FieldName, ToolingField>> = {
	clr: {
		kind: 'length',
		range: BOUNDS.radius,
		says: 'center-line radius of the die',
		with: ['die'],
		usual: () => undefined,
		without: 'as the die has it',
	},
	growth: {
		kind: 'number',
		range: BOUNDS.growth,
		says: "radius of a finished bend over the die's",
		with: ['die'],
		usual: () => null,
		without: 'as the die has it, else what is to be expected',
		help: TEST_PIECE,
	},
	stretch: {
		kind: 'number',
		range: BOUNDS.stretch,
		says: 'part by which an arc comes out longer',
		with: ['die'],
		usual: none,
		without: 'as the die has it, else 0',
		help: `0.004 is 0.4 %. ${TEST_PIECE}`,
	},
	markOffset: {
		kind: 'length',
		range: BOUNDS.markOffset,
		says: 'how far past the index line a bend begins',
		with: ['die'],
		usual: none,
		without: 'as the die has it, else 0',
		help: TEST_PIECE,
	},
	clamp: {
		kind: 'length',
		range: BOUNDS.holding,
		says: 'straight tube that the clamp needs',
		with: ['die'],
		usual: none,
		without: 'as the die has it, else none',
	},
	follow: {
		kind: 'length',
		range: BOUNDS.holding,
		says: 'straight tube needed behind the last bend',
		with: ['die'],
		usual: none,
		without: 'as the die has it, else none',
	},
	maxAngle: {
		kind: 'angle',
		range: BOUNDS.maxAngle,
		says: 'largest dial angle',
		with: ['machine', 'die'],
		usual: () => 180,
		without: 'as the bender has it, else 180',
	},
	dialStep: {
		kind: 'angle',
		range: BOUNDS.dialStep,
		says: 'smallest division of the dial',
		with: ['machine'],
		usual: () => 0.5,
		without: 'as the bender has it, else 0.5',
	},
	tape: {
		kind: 'length',
		range: BOUNDS.tape,
		says: 'division of the tape',
		with: ['machine'],
		usual: (units) => (units === 'in' ? 1 / 16 : 1),
		without: 'as the bender has it, else 1/16 in or 1 mm',
	},
	floor: {
		kind: 'length',
		range: BOUNDS.floor,
		says: "height of the die's plane above the floor",
		with: ['machine', 'die'],
		usual: () => null,
		without: 'as the bender has it, else not checked',
	},
};

/** In the order in which they are shown. */
export const FIELD_NAMES = Object.keys(TOOLING_FIELDS) as FieldName[];
