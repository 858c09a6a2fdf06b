/** The tubes that are bent for the figures, in inches, on a die whose growth was measured on a test piece. */
import type { Draw } from '../../src/practice/random.ts';
import type { Check, Job } from '../../src/tube/job.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const tooling = { growth: 1.02, tape: 1 / 32, clamp: 2, follow: 2 };
const trim = { start: 2, end: 2 };

/** A flat hat of 14, 31 and 17 degrees with 12 in legs, a drop to its crown and one to its far leg. */
export function flatHat(): Job {
	return plainJob({
		tooling,
		trim,
		// So wide that what a bend is off by is left to the bends after it.
		tolerance: { under: 0.8, over: 0.8 },
		shape: byBends(
			[
				[12, 14, 0],
				[12, 31, 180],
				[12, 17, 180],
			],
			12,
		),
		checks: [
			{ name: 'crown', kind: 'drop', from: 1, to: { bend: 2 }, surface: 'centre', tolerance: 1 / 16 },
			{ name: 'far leg', kind: 'drop', from: 1, to: { straight: 4 }, surface: 'centre', tolerance: 1 / 16 },
		],
	});
}

/** A 3-D tube: straights of 6 to 16 in, angles of 20 to 110 degrees, any rotations. */
export function anyTube(bends: number, draw: Draw): Job {
	const list = Array.from(
		{ length: bends },
		(_, i) => [draw.uniform(6, 16), draw.uniform(20, 110), i === 0 ? 0 : draw.uniform(-180, 180)] as const,
	);
	return plainJob({ tooling, trim, shape: byBends(list, draw.uniform(6, 16)) });
}

const EIGHT_BENDS_CHECKS: readonly Check[] = [
	{ name: 'rise', kind: 'drop', from: 1, to: { straight: 4 }, surface: 'centre', tolerance: 1 / 16 },
	{ name: 'legs', kind: 'angle', between: [2, 5], tolerance: 0.5 },
	{ name: 'reach', kind: 'span', from: { bend: 1 }, to: { bend: 6 }, tolerance: 1 / 8 },
	{ name: 'ends', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 1 / 8 },
];

/** A 3-D tube of eight bends with four checks, from end to end. */
export const eightBends = (draw: Draw): Job => ({ ...anyTube(8, draw), checks: EIGHT_BENDS_CHECKS });
