/** What a number may be; a bound that is left out does not hold. */
export interface Range {
	above?: number;
	least?: number;
	below?: number;
	most?: number;
}

export function isWithin(value: number, { above, least, below, most }: Range): boolean {
	return (
		(above === undefined || value > above) &&
		(least === undefined || value >= least) &&
		(below === undefined || value < below) &&
		(most === undefined || value <= most)
	);
}

/** To stand after what the number is: ` of 0.5 or more and at most 2`; empty where any number will do. */
export function rangeWords({ above, least, below, most }: Range): string {
	const lower = above !== undefined ? `above ${above}` : least !== undefined ? `of ${least} or more` : '';
	const upper = below !== undefined ? `below ${below}` : most !== undefined ? `at most ${most}` : '';
	const both = [lower, upper].filter((words) => words !== '').join(' and ');
	return both === '' ? '' : ` ${both}`;
}
