import { expect, it } from 'vitest';
import { coldPrior, growthOf } from '../../src/session/log/start.ts';
import { jobEnds } from '../../src/session/plan/ends.ts';
import { jobWarnings } from '../../src/session/plan/job-warnings.ts';
import { layout } from '../../src/tube/layout.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

/** A job with checks from end to end. */
function jobOf(bends: number) {
	return plainJob({
		tube: { ...plainJob().tube, stock: null },
		shape: byBends(
			Array.from(
				{ length: bends },
				(_, i) => [8 + (i % 5), 20 + ((7 * i) % 30), [180, 90, -90, 180, 35][i % 5]!] as const,
			),
			10,
		),
		checks: [
			{ name: 'apart', kind: 'span', from: { bend: 1 }, to: { bend: bends }, tolerance: 1 / 16 },
			{ name: 'legs', kind: 'angle', between: [1, bends + 1], tolerance: 0.5 },
		],
	});
}

/** Seconds of processor that laying it out takes, the least of some. */
function secondsFor(bends: number): number {
	const job = jobOf(bends);
	const times = Array.from({ length: 4 }, () => {
		const before = process.cpuUsage();
		const growth = growthOf(coldPrior(job));
		layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
		const { user, system } = process.cpuUsage(before);
		return (user + system) / 1e6;
	});
	return Math.min(...times);
}

it('a job of sixty bends is laid out in half a second of processor', () => {
	expect(secondsFor(60)).toBeLessThan(0.5);
});
