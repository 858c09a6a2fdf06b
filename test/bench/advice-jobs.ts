/** The tubes that the advice is tried on: a shallow hat, a main hoop, a brace in space, eight bends. Inches. */
import type { Job } from '../../src/tube/job.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';
import { BRACE_BENDS, BRACE_CHECKS, EIGHT_BENDS, HALF_WAY } from './drawn.ts';

const trim = { start: 1, end: 1 };
const tooling = { clamp: 2, follow: 1, tape: 1 / 16 };

const shallowHat = plainJob({
	name: 'shallow hat',
	tooling,
	trim,
	shape: byBends(
		[
			[16, 17, 0],
			[21, 34, 180],
			[21, 17, 180],
		],
		18,
	),
	tolerance: { length: 1 / 16, shape: 3 / 8 },
	checks: [
		{ name: 'crown', kind: 'drop', from: 1, to: { bend: 2 }, surface: 'centre', tolerance: 3 / 32 },
		{ name: 'far foot', kind: 'drop', from: 1, to: { straight: 4 }, surface: 'centre', tolerance: 3 / 16 },
	],
});

const mainHoop = plainJob({
	name: 'main hoop',
	tooling,
	trim,
	shape: byBends(
		[
			[26, 15, 0],
			[14, 75, 0],
			[22, 75, 0],
			[14, 15, 0],
		],
		26,
	),
	tolerance: { length: 1 / 8, shape: 1 / 2 },
	checks: [
		{ name: 'shoulder', kind: 'angle', between: [1, 3], tolerance: 1 },
		{ name: 'feet apart', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 3 / 8 },
	],
});

const brace = plainJob({
	name: 'brace in space',
	tooling,
	trim,
	shape: byBends(BRACE_BENDS, 13),
	tolerance: { length: 3 / 32, shape: 3 / 8 },
	checks: BRACE_CHECKS,
});

const eightBends = plainJob({
	name: 'eight bends',
	tooling,
	trim,
	shape: byBends(EIGHT_BENDS, 13),
	tolerance: { length: 3 / 16, shape: 3 / 4 },
	checks: [HALF_WAY, { name: 'ends', kind: 'span', from: { bend: 1 }, to: { end: 'far' }, tolerance: 3 / 8 }],
});

export const JOBS: readonly Job[] = [shallowHat, mainHoop, brace, eightBends];

/** The first three with checks enough that a wrong number shows. */
export const CHECKED_JOBS: readonly Job[] = [
	{
		...shallowHat,
		checks: [
			...shallowHat.checks,
			{ name: 'first slope', kind: 'angle', between: [1, 2], tolerance: 1 },
			{ name: 'second slope', kind: 'angle', between: [1, 3], tolerance: 1 },
			{ name: 'top', kind: 'span', from: { bend: 1 }, to: { bend: 2 }, tolerance: 3 / 16 },
			{ name: 'feet', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 1 / 4 },
		],
	},
	{
		...mainHoop,
		checks: [
			...mainHoop.checks,
			{ name: 'first slope', kind: 'angle', between: [1, 2], tolerance: 1 },
			{ name: 'across', kind: 'angle', between: [2, 4], tolerance: 1 },
			{ name: 'side', kind: 'span', from: { bend: 1 }, to: { bend: 2 }, tolerance: 3 / 16 },
			{ name: 'shoulders', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 1 / 4 },
			{ name: 'lie', kind: 'out', plane: [1, 2], to: { straight: 4 }, tolerance: 1 / 4 },
			{ name: 'lie of the foot', kind: 'out', plane: [1, 2], to: { straight: 5 }, tolerance: 3 / 8 },
		],
	},
	{
		...brace,
		checks: [
			...brace.checks,
			{ name: 'second knee', kind: 'angle', between: [2, 3], tolerance: 1 },
			{ name: 'legs', kind: 'angle', between: [1, 4], tolerance: 1 },
			{ name: 'side', kind: 'span', from: { bend: 1 }, to: { bend: 2 }, tolerance: 3 / 16 },
			{ name: 'last knees', kind: 'span', from: { bend: 2 }, to: { bend: 4 }, tolerance: 1 / 4 },
		],
	},
];
