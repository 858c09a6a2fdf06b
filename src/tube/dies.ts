/** On which die each bend is bent, and what that die has. Where several dies bend one tube, all that differs between them is asked here. */
import type { DieFields, Job, Tooling } from './job.ts';

/** Finished center-line radius over the die's: `value`, and in its place that of each further die, by its name. */
export interface GrowthByDie {
	value: number;
	dies?: Readonly<Record<string, { value: number }>>;
}

/** The name of the die that a bend (from 1) is bent on. */
export function dieOf({ shape, tooling }: Pick<Job, 'shape' | 'tooling'>, bend: number): string {
	const named = shape.kind === 'bends' ? shape.bends[bend - 1]?.die : undefined;
	return named ?? tooling.die;
}

/** The tooling with this die in the machine: what the die does not have of its own is the job's. */
export function toolingOfDie({ tooling }: Pick<Job, 'tooling'>, die: string): Tooling {
	return die === tooling.die ? tooling : { ...tooling, ...tooling.dies?.[die], die };
}

/** The tooling with which a bend (from 1) is bent. */
export function toolingOf(job: Pick<Job, 'shape' | 'tooling'>, bend: number): Tooling {
	return toolingOfDie(job, dieOf(job, bend));
}

/** The dies that bends are bent on, each once, in the order in which they are put in. */
export function diesAtWork({ shape, tooling }: Pick<Job, 'shape' | 'tooling'>): string[] {
	const named = shape.kind === 'bends' ? shape.bends.map(({ die }) => die ?? tooling.die) : [tooling.die];
	return [...new Set(named)];
}

/** The job's own die first, then every other that bends are bent on. */
export function diesOf(job: Pick<Job, 'shape' | 'tooling'>): string[] {
	return [...new Set([job.tooling.die, ...diesAtWork(job)])];
}

/** The place of each bend's die among `diesOf`. */
export function dieNumbers(job: Pick<Job, 'shape' | 'tooling'>, bends: number): number[] {
	const dies = diesOf(job);
	return Array.from({ length: bends }, (_, i) => dies.indexOf(dieOf(job, i + 1)));
}

/** Whether any bend is bent on another die than the job's own. */
export const hasSeveralDies = (job: Pick<Job, 'shape' | 'tooling'>): boolean => diesOf(job).length > 1;

/** Where the job file says a figure of a die, which is the job's own where the die has none. */
export function filePlaceOf({ tooling }: Pick<Job, 'tooling'>, die: string, field: keyof DieFields): string {
	if (die === tooling.die || tooling.dies?.[die]?.[field] === undefined) return `tooling.${field}`;
	return furtherPlace(die, field);
}

/** The same of what a further die has of its own. */
export function furtherPlace(die: string, field: string): string {
	return /^[\w-]+$/.test(die) ? `tooling.dies.${die}.${field}` : `tooling.dies[${JSON.stringify(die)}].${field}`;
}

/** What a bend's radius comes out as, over its die's. `bend` counts from 1. */
export function growthAt(job: Pick<Job, 'shape' | 'tooling'>, { value, dies }: GrowthByDie, bend: number): number {
	return dies?.[dieOf(job, bend)]?.value ?? value;
}

/** The finished center-line radius of a bend (from 1). */
export function radiusAt(job: Pick<Job, 'shape' | 'tooling'>, growth: GrowthByDie, bend: number): number {
	return toolingOf(job, bend).clr * growthAt(job, growth, bend);
}
