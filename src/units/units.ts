/** The only file that knows what an inch is. */
export type Units = 'in' | 'mm';

/** Exactly, by definition (NIST SP 811). */
const MM_PER_INCH = 25.4;

/** A length given in `from`, in `to`. */
export function convertLength(length: number, from: Units, to: Units): number {
	if (from === to) return length;
	return from === 'in' ? length * MM_PER_INCH : length / MM_PER_INCH;
}
