import type { Growth, GrowthSource } from '../tube/growth.ts';

/** `1.8 % larger`, of a radius beside the die's. */
export function growthPercent(growth: number): string {
	const size = Math.abs((growth - 1) * 100).toFixed(1);
	return `${size} % ${growth < 1 ? 'smaller' : 'larger'}`;
}

/** What the radius is expected to come out as, over the die's. */
export function growthWords(growth: number): string {
	return `The radius should come out ${growthPercent(growth)} than the die's: the marks allow for that.`;
}

const FROM: Readonly<Record<GrowthSource, string>> = {
	job: ', as the job says.',
	die: ', as kept with the die.',
	expected: '. That is what to expect; a test piece tells it.',
};

/** What radius the marks are for, and where that is from. */
export function marksFor({ value, from }: Growth): string {
	const radius = value === 1 ? "the die's own radius" : `a radius ${growthPercent(value)} than the die's`;
	return `The marks are for ${radius}${FROM[from]}`;
}
