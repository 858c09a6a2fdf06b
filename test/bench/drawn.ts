/** What tubes of several benches are drawn by. Inches, degrees. */
import type { Check } from '../../src/tube/job.ts';

/** Eight bends in space: straight before, angle, rotation. */
export const EIGHT_BENDS = [
	[12, 30, 0],
	[9, 62, 105],
	[13.5, 44, -70],
	[10, 88, 160],
	[11.25, 35, 20],
	[14, 71, -135],
	[9.5, 52, 80],
	[12, 40, -25],
] as const;

/** A brace of four bends in space, in the same order. */
export const BRACE_BENDS = [
	[12, 38, 0],
	[14, 66, 90],
	[11, 49, -58],
	[13, 72, 145],
] as const;

/** Checks on such a brace. */
export const BRACE_CHECKS: readonly Check[] = [
	{ name: 'first knee', kind: 'angle', between: [1, 2], tolerance: 1 },
	{ name: 'knees apart', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 3 / 16 },
	{ name: 'twist', kind: 'out', plane: [1, 2], to: { straight: 4 }, tolerance: 1 / 4 },
];

/** Of the eight bends. */
export const HALF_WAY: Check = {
	name: 'half way',
	kind: 'span',
	from: { bend: 1 },
	to: { bend: 5 },
	tolerance: 3 / 8,
};
