/**
 * The tubes that the program's figures are held against: a flat one, one in space, a long one. Inches. Their tolerances let
 * some two of three tubes fit: what a stated chance is worth shows where it is neither 0 nor 1.
 */
import type { Job } from '../../src/tube/job.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

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
	checks: [
		{ name: 'first knee', kind: 'angle', between: [1, 2], tolerance: 1 },
		{ name: 'knees apart', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 3 / 16 },
		{ name: 'twist', kind: 'out', plane: [1, 2], to: { straight: 4 }, tolerance: 1 / 4 },
	],
});

const long = plainJob({
	name: 'eight bends',
	tooling,
	trim,
	tolerance: { length: 3 / 16 },
	shape: byBends(
		[
			[12, 30, 0],
			[9, 62, 105],
			[13.5, 44, -70],
			[10, 88, 160],
			[11.25, 35, 20],
			[14, 71, -135],
			[9.5, 52, 80],
			[12, 40, -25],
		],
		13,
	),
	checks: [{ name: 'half way', kind: 'span', from: { bend: 1 }, to: { bend: 5 }, tolerance: 3 / 8 }],
});

export const JOBS: readonly Job[] = [flat, space, long];
