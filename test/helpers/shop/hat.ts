import type { Job } from '../../../src/tube/job.ts';
import { byBends, plainJob } from './plain-job.ts';

/** A flat shallow hat: up by 17, down by 34, up by 17 degrees, with drop checks on its crown and its far foot. */
export function hatJob(parts: Partial<Job> = {}): Job {
	return plainJob({
		name: 'Bow rail',
		shape: byBends(
			[
				[16, 17, 0],
				[20, 34, 180],
				[20, 17, 180],
			],
			18,
		),
		checks: [
			{ name: 'crown', kind: 'drop', from: 1, to: { bend: 2 }, surface: 'centre', tolerance: 1 / 16 },
			{ name: 'far foot', kind: 'drop', from: 1, to: { straight: 4 }, surface: 'centre', tolerance: 1 / 16 },
		],
		tooling: { growth: 1 },
		...parts,
	});
}
