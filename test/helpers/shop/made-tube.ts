import type { ToldBend, ToldTooling, TubeReading } from '../../../src/fit/built-tube.ts';
import { gripsOf, legGrips } from '../../../src/fit/grips.ts';
import { checkValue } from '../../../src/tube/checks.ts';
import type { Check } from '../../../src/tube/job.ts';

/** A 6 in die, its errors as a session takes them. */
export const tooling = (): ToldTooling => ({
	radius: 6,
	dieSpread: 0.01,
	bendSpread: 0.005,
	stretch: { value: 0, sd: 0.0045 },
	markOffset: 0,
});

/** One made bend as hands and instruments tell it: marks to .4 of 1/32 in, angles to a quarter degree, planes to .4 degree. */
export const toldBend = (mark: number, angle: number, rotation: number, parts: Partial<ToldBend> = {}): ToldBend => ({
	mark: { value: mark, sd: 0.0125 },
	angle: { value: angle, sd: 0.25 },
	rotation: { value: rotation, sd: 0.4 },
	relievedFrom: null,
	...parts,
});

type Drop = Extract<Check, { kind: 'drop' }>;

/** Readings without a value yet have NaN: `of` a shape gives it. */
const reading = (check: Check, value: number | null, sd: number): TubeReading => ({
	name: check.name,
	value: value ?? Number.NaN,
	sd,
	of: (uncut) => checkValue(check, uncut, { od: 1.5 }),
	grips: (laid) => gripsOf(check, laid, { od: 1.5 }),
});

export const dropReading = (from: number, to: Drop['to'], value: number | null, sd: number): TubeReading =>
	reading({ name: `drop from ${from}`, kind: 'drop', from, to, surface: 'centre', tolerance: 1 / 16 }, value, sd);

export const angleReading = (j: number, k: number, value: number | null, sd: number): TubeReading =>
	reading({ name: `angle ${j} to ${k}`, kind: 'angle', between: [j, k], tolerance: 0.5 }, value, sd);

export const spanReading = (from: number, to: number, value: number | null, sd: number): TubeReading =>
	reading(
		{ name: `span ${from} to ${to}`, kind: 'span', from: { bend: from }, to: { bend: to }, tolerance: 0.1 },
		value,
		sd,
	);

/** The straight before a bend, tangent to tangent. */
export const legReading = (bend: number, value: number | null, sd: number): TubeReading => ({
	name: `leg ${bend}`,
	value: value ?? Number.NaN,
	sd,
	of: ({ straights }) => straights[bend - 1]!,
	grips: (laid) => legGrips(bend, laid),
});
