import type { Kin } from '../../springback/kin.ts';
import { mechanicsPrior } from '../../springback/mechanics.ts';
import type { Job } from '../../tube/job.ts';
import { convertLength } from '../../units/units.ts';

/** The bender, die, tube size and material that a job's springback is learned under. */
export function kinOf({ units, tube, tooling }: Job): Kin {
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
