import type { DieGrowth, Growth, GrowthSource } from '../tube/growth.ts';
import { foreignName } from './foreign.ts';
import { percent } from './numbers.ts';

/** `1.8 % larger`, of a radius beside the die's. */
export function growthPercent(growth: number): string {
	return `${percent(Math.abs(growth - 1))} ${growth < 1 ? 'smaller' : 'larger'}`;
}

/** What the radius is expected to come out as, over the die's. */
export function growthWords(growth: number, die?: string): string {
	const on = die === undefined ? 'The' : `On die "${foreignName(die)}" the`;
	return `${on} radius should come out ${growthPercent(growth)} than the die's: the marks allow for that.`;
}

const FROM: Readonly<Record<GrowthSource, string>> = {
	job: ', as the job says.',
	die: ', as kept with the die.',
	expected: '. That is what to expect; a test piece tells it.',
};

/** What radius the marks are for, and where that is from. */
export function marksFor({ dies, ...own }: Growth, die: string): string {
	const further = Object.entries(dies ?? {});
	if (further.length === 0) return `The marks are for ${radiusFrom(own)}`;
	const each = [[die, own] as const, ...further].map(
		([name, of]) => `On die "${foreignName(name)}" they are for ${radiusFrom(of)}`,
	);
	return `The marks are for each bend's own die. ${each.join(' ')}`;
}

function radiusFrom({ value, from }: DieGrowth): string {
	const radius = value === 1 ? "the die's own radius" : `a radius ${growthPercent(value)} than the die's`;
	return `${radius}${FROM[from]}`;
}
