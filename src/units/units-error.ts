import type { Units } from './units.ts';

/** What kind of number a field holds: a length, an angle in degrees, or a number without a unit. */
export type Quantity = 'length' | 'angle' | 'number';

/** What was to be read; a length without a unit of its own is in `units`. */
export type NumberWanted = { kind: 'length'; units: Units } | { kind: Exclude<Quantity, 'length'> };

/** Why a text is none, or could be read as two different ones. */
export type UnitsFault =
	| { code: 'not-finite' | 'too-long' | 'empty' | 'divided-by-nothing' | 'breaks-off' }
	/** `text`: what stands there and has no meaning, or none in that place. */
	| { code: 'unknown-sign' | 'side-by-side' | 'number-missing' | 'unit-alone' | 'unknown-unit'; text: string }
	| { code: 'bracket-not-opened' | 'bracket-not-closed' }
	| { code: 'one-without-unit' | 'units-multiplied' | 'unit-in-divisor' | 'other-than-inches' }
	| { code: 'two-strokes' | 'over-a-fraction' | 'spaced-after-feet' }
	/** A whole number and a fraction with a hyphen between them that touches only one. */
	| { code: 'half-spaced'; whole: string; fraction: string }
	| { code: 'fraction-of-one-or-more'; fraction: string };

/** A text that is no length, angle or number; `text`: what stood there. */
export class UnitsError extends Error {
	override name = 'UnitsError';

	constructor(
		readonly text: string,
		readonly fault: UnitsFault,
		readonly wanted: NumberWanted,
	) {
		super(`"${text}" is no ${wanted.kind}: ${fault.code}`);
	}
}
