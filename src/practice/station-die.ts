import { mechanicsPrior } from '../springback/mechanics.ts';
import { toolingOfDie } from '../tube/dies.ts';
import type { Job } from '../tube/job.ts';
import type { Draw } from './random.ts';
import type { DieOddity } from './shop.ts';

/** Log-normal spread of the finished radius of one die. */
const DIE_RADIUS = 0.01;
/** How further dies differ from the first one in the same machine (common practice, no source): standard deviations. */
const DIE_TAKE_UP = 0.3;
const DIE_LAG = 0.2;
const DIE_PROPORTION = 0.15;

/** A die as it truly is; without an oddity the machine's first. */
export interface StationDie {
	/** Finished center-line radius. */
	radius: number;
	oddity?: DieOddity;
}

export function stationDie(job: Job, name: string, draw: Draw, isFirst: boolean): StationDie {
	const { clr, growth } = toolingOfDie(job, name);
	const grown = growth ?? mechanicsPrior(job.tube, clr, job.tube.material).growth;
	const radius = clr * grown * Math.exp(draw.normal(0, DIE_RADIUS));
	if (isFirst) return { radius };
	// The larger the radius, the less of each degree is plastic; the frame gives as on any die, so that half of it follows.
	const larger = Math.sqrt(clr / job.tooling.clr);
	const proportion = larger * Math.exp(draw.normal(0, DIE_PROPORTION));
	return { radius, oddity: { takeUp: draw.normal(0, DIE_TAKE_UP), lag: draw.normal(0, DIE_LAG), proportion } };
}
