import { diesOf, type GrowthByDie, toolingOfDie } from './dies.ts';
import type { Job } from './job.ts';
import { finishedShape } from './resolve.ts';

/** Where a growth comes from: the job file, what is kept of the die, or what is expected of it. */
export type GrowthSource = 'job' | 'die' | 'expected';

/** Finished center-line radius over the die's, of one die. */
export interface DieGrowth {
	value: number;
	from: GrowthSource;
}

/** That of the job's own die and, where bends name others, of each of those. */
export interface Growth extends DieGrowth {
	dies?: Readonly<Record<string, DieGrowth>>;
}

/** `tooMuch`: what is expected of the die, where the drawing's corners leave that no room. */
export interface PlannedDieGrowth extends DieGrowth {
	tooMuch?: number;
}

/** The growth that a job is planned with. */
export interface PlannedGrowth extends PlannedDieGrowth {
	dies?: Readonly<Record<string, PlannedDieGrowth>>;
}

/**
 * The growth that a job states of each die, else the expected one; 1 of all that are only expected where those would leave less than no straight
 * somewhere. `stated`: where the job's own comes from.
 */
export function plannedGrowth(
	job: Job,
	stated: (die: string) => 'job' | 'die',
	expected: (die: string) => number,
): PlannedGrowth {
	const first = byDie(job, (die): PlannedDieGrowth => {
		const { growth } = toolingOfDie(job, die);
		return growth === null ? { value: expected(die), from: 'expected' } : { value: growth, from: stated(die) };
	});
	const known = [first, ...Object.values(first.dies ?? {})];
	if (known.every(({ from }) => from !== 'expected') || withoutRoom(job, first).length === 0) return first;
	return byDie(job, (die) => {
		const { value, from } = first.dies?.[die] ?? first;
		return from === 'expected' ? { value: 1, from, tooMuch: value } : { value, from };
	});
}

/** What is to be known of every die of a job, the own die's first and the others beside it. */
export function byDie<T extends object>(job: Job, of: (die: string) => T): T & { dies?: Record<string, T> } {
	const [own, ...others] = diesOf(job);
	const first = of(own!);
	return others.length === 0 ? first : { ...first, dies: Object.fromEntries(others.map((die) => [die, of(die)])) };
}

/** The growth that was expected, where it leaves no room; null where it does. */
export function refusedGrowth({ value, tooMuch, dies }: PlannedGrowth): GrowthByDie | null {
	const all = Object.entries(dies ?? {});
	if (tooMuch === undefined && all.every(([, each]) => each.tooMuch === undefined)) return null;
	return {
		value: tooMuch ?? value,
		...(dies && { dies: Object.fromEntries(all.map(([die, each]) => [die, { value: each.tooMuch ?? each.value }])) }),
	};
}

/** The straights, from 1, that arcs of this growth leave no room for. */
export function withoutRoom(job: Job, growth: GrowthByDie): number[] {
	return finishedShape(job, growth).straights.flatMap((straight, i) => (straight < 0 ? [i + 1] : []));
}
