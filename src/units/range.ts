import { convertLength, type Units } from './units.ts';

/** What a number may be; a bound that is left out does not hold. */
export interface Range {
	above?: number;
	least?: number;
	below?: number;
	most?: number;
	/** 0 will do too. */
	orZero?: boolean;
}

export function isWithin(value: number, { above, least, below, most, orZero }: Range): boolean {
	if (orZero && value === 0) return true;
	return (
		(above === undefined || value > above) &&
		(least === undefined || value >= least) &&
		(below === undefined || value < below) &&
		(most === undefined || value <= most)
	);
}

/** A range of lengths given in mm, in `units`: rounded to what a person reads, inwards. */
export function lengthsIn({ least, most }: Range, units: Units): Range {
	if (units === 'mm') return { least, most };
	const inches = (mm: number | undefined, inwards: (value: number) => number) =>
		mm === undefined ? undefined : threeDigits(convertLength(mm, 'mm', 'in'), inwards);
	return { least: inches(least, Math.ceil), most: inches(most, Math.floor) };
}

/** To three digits. */
function threeDigits(value: number, inwards: (value: number) => number): number {
	if (value === 0) return 0;
	const digits = 2 - Math.floor(Math.log10(Math.abs(value)));
	const scaled =
		digits < 0 ? inwards(value / 10 ** -digits) * 10 ** -digits : inwards(value * 10 ** digits) / 10 ** digits;
	return Number(scaled.toPrecision(3));
}
