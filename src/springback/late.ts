/** A bend that takes many pulls is to come to its end. Each rule here grows with the pulls that it has taken past the usual few. */

/** Pulls in a band of a degree or more before a bend is late; a band of half that has four times as many. */
const FEW = 3;
/** With each late pull the next stop lies further beyond the furthest that left the bend short: this part of what is missing to the target. */
const FURTHER_EACH = 0.2;
/** With each late pull a bend may be so much more probably short and is taken as it is; never one that is short for certain. */
const EASED = 0.25;
const SURELY_SHORT = 0.99;

/** Pulls past the usual few, below 0 before them. `under`, `over`: degrees. */
export function lateBy(pulls: number, { under, over }: { under: number; over: number }): number {
	return pulls - FEW * Math.max(1, 1 / (under + over) ** 2);
}

/** How far beyond the furthest stop that left the bend short the next one lies at the least, `missing` degrees being missing to the target. */
export function beyond(late: number, missing: number): number {
	return Math.min(1, FURTHER_EACH * Math.max(0, late)) * Math.max(0, missing);
}

/** The probability of being short up to which a bend is taken as it is. */
export function mayBeShort(late: number): number {
	return Math.min(SURELY_SHORT, 0.5 + EASED * Math.max(0, late));
}
