/**
 * The value of a chi-square variable that is as likely to be exceeded as a standard normal one is to exceed `z`: its cube root is nearly normal
 * (E. B. Wilson, M. M. Hilferty, Proc. Natl. Acad. Sci. 17 (1931) 684-688).
 */
export function chiSquareAt(z: number, degrees: number): number {
	const spread = 2 / (9 * degrees);
	return degrees * Math.max(0, 1 - spread + z * Math.sqrt(spread)) ** 3;
}
