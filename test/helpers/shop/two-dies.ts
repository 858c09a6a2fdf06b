import type { Job, Tooling } from '../../../src/tube/job.ts';
import { type JobParts, plainJob } from './plain-job.ts';

/** A rail of four bends, the outer two on a tighter die than the job's own. */
export function twoDieJob({ tooling, ...parts }: JobParts = {}, tight: Partial<Tooling> = {}): Job {
	const bend = (straight: number, angle: number, rotation: number, die?: string) => ({
		straight,
		angle,
		rotation,
		...(die && { die }),
	});
	const bends = [bend(10, 70, 0, 'tight'), bend(14, 25, 180), bend(15, 40, 90), bend(13, 60, -90, 'tight')];
	return plainJob({
		shape: { kind: 'bends', bends, last: 11 },
		trim: { start: 1, end: 1 },
		...parts,
		tooling: { die: 'wide', clr: 7, ...tooling, dies: { tight: { clr: 4.5, ...tight } } },
	});
}
