import type { Kin } from '../../springback/kin.ts';
import { mechanicsPrior } from '../../springback/mechanics.ts';
import { diesOf, toolingOfDie } from '../../tube/dies.ts';
import type { Job } from '../../tube/job.ts';
import { convertLength } from '../../units/units.ts';

/** The bender, die, tube size and material that the springback on a die of the job is learned under; its own without a name. */
export function kinOf(job: Job, die = job.tooling.die): Kin {
	const { units, tube } = job;
	const tooling = toolingOfDie(job, die);
	const mm = (length: number) => convertLength(length, units, 'mm');
	return {
		bender: tooling.bender,
		die: tooling.die,
		od: mm(tube.od),
		wall: mm(tube.wall),
		clr: mm(tooling.clr),
		material: tube.material.name,
		k: mechanicsPrior(tube, tooling.clr, tube.material).k,
	};
}

/** The same of all dies that bend it, its own first. */
export const kinsOfJob = (job: Job): Kin[] => diesOf(job).map((die) => kinOf(job, die));
