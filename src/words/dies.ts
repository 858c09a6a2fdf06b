import { dieOf, diesAtWork, hasSeveralDies } from '../tube/dies.ts';
import type { Job } from '../tube/job.ts';
import { capital } from '../units/format.ts';
import { bendsNamed } from './bend-name.ts';
import { foreignName } from './foreign.ts';

/** A bend's finished center-line radius. */
export interface BendRadius {
	bend: number;
	radius: number;
}

/** One radius where all bends have the same, else each with its bend. */
export function radiiWords(bends: readonly BendRadius[], say: (radius: number) => string): string {
	const [first, ...rest] = bends;
	if (first && rest.every(({ radius }) => radius === first.radius)) return say(first.radius);
	return bends.map(({ bend, radius }) => `${say(radius)} at bend ${bend}`).join(', ');
}

/** Which bends are bent on which die; empty where all are bent on the job's own. */
export function dieListWords(job: Job): string {
	if (!hasSeveralDies(job)) return '';
	const bends = job.shape.kind === 'bends' ? job.shape.bends.map((_, i) => i + 1) : [];
	const each = diesAtWork(job).map((die) => {
		const on = bends.filter((bend) => dieOf(job, bend) === die);
		return `${bendsNamed(on)} on die "${foreignName(die)}"`;
	});
	return capital(`${each.join('; ')}.`);
}
