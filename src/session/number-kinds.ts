import type { Units } from '../units/units.ts';
import type { CheckKind, ReadingKind } from './protocol.ts';

/** Why a number cannot be a reading of its kind, or null. Unlikely is not impossible: a doubtful reading is asked again instead. */
export function wrongNumber(value: number, of: ReadingKind, check?: CheckKind): string | null {
	if (check) return wrongCheck(value, check);
	switch (of) {
		case 'mark':
		case 'length':
			return value > 0 ? null : 'a length is above 0.';
		case 'loaded':
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'an angle lies from 0 to 360 degrees.';
		case 'released':
		case 'pointer':
			return Math.abs(value) <= 360 ? null : 'a dial shows at most 360 degrees.';
		default:
			return null;
	}
}

function wrongCheck(value: number, kind: CheckKind): string | null {
	switch (kind) {
		case 'ovality':
			return value > 0 && value <= 1 ? null : 'the least diameter over the greatest lies above 0 and not above 1.';
		case 'angle':
			return value >= 0 && value <= 360 ? null : 'an angle lies from 0 to 360 degrees.';
		case 'out':
			return null;
		default:
			return value >= 0 ? null : 'this distance is not below 0.';
	}
}

/** What stands behind a check's number in a sentence. */
export function checkUnit(kind: CheckKind, units: Units): string {
	if (kind === 'ovality') return '';
	return kind === 'angle' ? ' degrees' : ` ${units}`;
}
