import type { NumberFault } from './facts/index.ts';
import type { CheckKind, ReadingKind } from './kinds.ts';

/** Why a number cannot be a reading of its kind, or null. Unlikely is not impossible: a doubtful reading is asked again instead. */
export function wrongNumber(value: number, of: ReadingKind, check?: CheckKind): NumberFault | null {
	if (check) return wrongCheck(value, check);
	switch (of) {
		case 'mark':
		case 'length':
			return value > 0 ? null : 'above-0';
		case 'loaded':
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'angle-0-to-360';
		case 'released':
		case 'pointer':
			return Math.abs(value) <= 360 ? null : 'dial-to-360';
		default:
			return null;
	}
}

function wrongCheck(value: number, kind: CheckKind): NumberFault | null {
	switch (kind) {
		case 'ovality':
			return value > 0 && value <= 1 ? null : 'ratio-0-to-1';
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'angle-0-to-360';
		case 'out':
			return null;
		case 'overall':
			return value > 0 ? null : 'above-0';
		default:
			return value >= 0 ? null : 'not-below-0';
	}
}
