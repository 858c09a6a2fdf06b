import { clamp } from '../maths/scalar.ts';
/** Chances as a person says them. */

/** Of fitting: `about 8 in 10`. */
export function inTen(chance: number): string {
	if (chance >= 0.95) return 'more than 9 in 10';
	return chance < 0.05 ? 'less than 1 in 10' : `about ${clamp(Math.round(10 * chance), 1, 9)} in 10`;
}

/** Of going wrong: `about 2 in 100`. */
export function inHundred(chance: number): string {
	if (chance < 0.005) return 'less than 1 in 100';
	return chance >= 0.995 ? 'more than 99 in 100' : `about ${Math.round(100 * chance)} in 100`;
}
