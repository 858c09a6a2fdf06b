import type { Range } from '../units/range.ts';

/**
 * What the numbers of a job, a bender and a die may be: what an instrument or a shop can have, with room to spare. Each reason stands in
 * `src/job/README.md`. Lengths in mm, angles in degrees.
 */
export const BOUNDS = {
	od: { least: 1, most: 1000 },
	wall: { least: 0.05, most: 500 },
	stock: { least: 10, most: 100_000 },
	straight: { least: 0, most: 100_000 },
	coordinate: { least: -100_000, most: 100_000 },
	trim: { least: 0, most: 10_000 },
	radius: { least: 1, most: 20_000 },
	holding: { least: 0, most: 10_000 },
	markOffset: { least: -1000, most: 1000 },
	tape: { least: 0.01, most: 100 },
	floor: { least: 0, most: 10_000 },
	lengthTolerance: { least: 0.01, most: 1000 },
	shapeTolerance: { least: 0.01, most: 10_000 },
	jointOffset: { least: -1000, most: 1000 },
	jointAngle: { least: 10, most: 170 },
	bendAngle: { least: 0.01, most: 179.99 },
	maxAngle: { least: 1, most: 360 },
	dialStep: { least: 0.01, most: 45 },
	band: { orZero: true, least: 0.01, most: 45 },
	angleTolerance: { least: 0.01, most: 90 },
	ratioTolerance: { least: 0.001, below: 1 },
	growth: { least: 0.5, most: 2 },
	stretch: { above: -0.5, below: 0.5 },
	risk: { least: 0.0001, most: 0.5 },
} as const satisfies Readonly<Record<string, Range>>;
