import { formatAngle, trimmed } from './format.ts';
import { parseQuantity, type Quantity } from './parse.ts';
import type { Units } from './units.ts';

/**
 * How a number of that kind is read, for whoever writes it to see; a length in `units`: `= 31.5 in`.
 * @throws UnitsError for whatever is none
 */
export function understood(text: string, kind: Quantity, units: Units): string {
	const value = parseQuantity(text, kind, units);
	if (kind === 'angle') return formatAngle(value, 3);
	return kind === 'length' ? `${trimmed(value, 4)} ${units}` : trimmed(value, 4);
}
