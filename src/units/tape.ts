/** A length as it is found on a tape. */
import { trimmed } from './format.ts';
import type { Units } from './units.ts';

/** The finest division that is printed as a fraction; tapes stop at 64ths. */
const FINEST = 128;

/** What is held on a piece's end when the tape's own hook is not trusted: an inch, or 100 mm (common practice, no source). */
export const BURNT: Readonly<Record<Units, number>> = { in: 1, mm: 100 };

/** Most decimals of a division that is none of the fractions of an inch. */
const MOST_DECIMALS = 4;

/**
 * A length rounded to the tape's division, without unit: `10 3/8`, `3/8`, `587`. In inches a division of halves,
 * quarters and so on prints as a reduced fraction; any other, and every one in mm, as a decimal.
 */
export function formatTape(length: number, division: number, units: Units): string {
	if (!(division > 0)) throw new RangeError(`A tape's division must be above 0, not ${division}.`);
	const steps = Math.round(Math.abs(length) / division);
	const sign = length < 0 && steps > 0 ? '-' : '';
	// Beyond whole numbers that can be told apart there are neither fractions nor divisions.
	if (steps >= Number.MAX_SAFE_INTEGER / FINEST) return trimmed(length, 0);
	const under = units === 'in' ? denominator(division) : null;
	if (under === null) return sign + trimmed(steps * division, decimals(division));
	const parts = steps * Math.round(division * under);
	const whole = Math.floor(parts / under);
	const over = parts % under;
	if (over === 0) return `${sign}${whole}`;
	const common = gcd(over, under);
	return `${sign}${whole === 0 ? '' : `${whole} `}${over / common}/${under / common}`;
}

/** The least power of two of which the division is a whole number of parts; null if it is finer or none. */
function denominator(division: number): number | null {
	for (let under = 1; under <= FINEST; under *= 2) if (isWholeNumber(division * under)) return under;
	return null;
}

function decimals(division: number): number {
	let places = 0;
	while (places < MOST_DECIMALS && !isWholeNumber(division * 10 ** places)) places++;
	return places;
}

function isWholeNumber(value: number): boolean {
	return value > 0.5 && Math.abs(value - Math.round(value)) < 1e-9 * Math.max(1, value);
}

function gcd(a: number, b: number): number {
	return b === 0 ? a : gcd(b, a % b);
}
