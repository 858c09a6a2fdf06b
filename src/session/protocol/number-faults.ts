import { BOUNDS } from '../../tube/bounds.ts';
import { convertLength, type Units } from '../../units/units.ts';
import type { NumberFault } from './facts/index.ts';
import type { CheckKind, ReadingKind } from './kinds.ts';

/** Why a number cannot be a reading of its kind, or null. Unlikely is not impossible: a doubtful reading is asked again instead. */
export function wrongNumber(value: number, of: ReadingKind, units: Units, check?: CheckKind): NumberFault | null {
	if (check) return wrongCheck(value, check, units);
	switch (of) {
		case 'mark':
		case 'length':
			return value > 0 ? tooLong(value, units) : 'above-0';
		case 'loaded':
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'angle-0-to-360';
		case 'released':
		case 'pointer':
			return Math.abs(value) <= 360 ? null : 'dial-to-360';
		case 'rotation':
			return Math.abs(value) <= 360 ? null : 'turn-to-360';
		default:
			return null;
	}
}

function tooLong(value: number, units: Units): NumberFault | null {
	// No tape reads further, and no tube is longer.
	return Math.abs(value) <= convertLength(BOUNDS.straight.most, 'mm', units) ? null : 'at-most-100-m';
}

function wrongCheck(value: number, kind: CheckKind, units: Units): NumberFault | null {
	switch (kind) {
		case 'ovality':
			return value > 0 && value <= 1 ? null : 'ratio-0-to-1';
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'angle-0-to-360';
		case 'out':
			return tooLong(value, units);
		case 'overall':
			return value > 0 ? tooLong(value, units) : 'above-0';
		default:
			return value >= 0 ? tooLong(value, units) : 'not-below-0';
	}
}
