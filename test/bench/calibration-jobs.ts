/**
 * The tubes that the program's figures are held against: a flat one, one in space, a long one. Inches. Their tolerances let
 * some two of three tubes fit: what a stated chance is worth shows where it is neither 0 nor 1.
 */
import type { Job } from '../../src/tube/job.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';
import { BRACE_CHECKS, EIGHT_BENDS, HALF_WAY } from './drawn.ts';

const trim = { start: 1.5, end: 1.5 };
const tooling = { clamp: 2, follow: 1, growth: 1.02, tape: 1 / 32 };

/** Up to a crown and down again beside it. */
const flat = plainJob({
	name: 'flat, three bends',
	tooling,
	trim,
	tolerance: { length: 3 / 32 },
	shape: byBends(
		[
			[13, 26, 0],
			[15.5, 52, 180],
			[12.25, 26, 180],
		],
		14,
	),
	checks: [
		{ name: 'crown', kind: 'drop', from: 1, to: { bend: 2 }, surface: 'centre', tolerance: 3 / 16 },
		{ name: 'legs', kind: 'angle', between: [1, 4], tolerance: 1 },
	],
});

const space = plainJob({
	name: 'in space, four bends',
	tooling,
	trim,
	tolerance: { length: 3 / 32 },
	shape: byBends(
		[
			[11.5, 38, 0],
			[14, 66, 90],
			[10.5, 49, -58],
			[13, 81, 145],
		],
		12.5,
	),
	checks: BRACE_CHECKS,
});

const long = plainJob({
	name: 'eight bends',
	tooling,
	trim,
	tolerance: { length: 3 / 16 },
	shape: byBends(EIGHT_BENDS, 13),
	checks: [HALF_WAY],
});

export const JOBS: readonly Job[] = [flat, space, long];
