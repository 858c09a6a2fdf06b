/** An angle that is known apart from the filter, of a bend made before, when it is measured again. */

import { updated } from '../maths/gaussian.ts';
import { type Filter, made } from './filter.ts';
import { expectReading, finderTells, type ReadingOptions, soundness } from './reading.ts';
import { wrongPart } from './scatter.ts';

export interface KnownAngle {
	angle: number;
	sd: number;
}

/** Variance of one reading of the angle finder. */
function finderVariance(f: Filter): number {
	return expectReading(f, 'angle').sd ** 2 - made(f).sd ** 2;
}

/** What the finder is expected to show; `sd` with the reading's own error. */
export function expectKnown(f: Filter, { angle, sd }: KnownAngle): { value: number; sd: number } {
	return { value: angle, sd: Math.sqrt(sd ** 2 + finderVariance(f)) };
}

/** Whether a blunder is likelier than the reading. */
export function isUnlikely(f: Filter, known: KnownAngle, value: number): boolean {
	const expected = expectKnown(f, known);
	return soundness(value - expected.value, expected.sd ** 2, wrongPart(f.scatter)) < 0.5;
}

/**
 * After one more reading, independent of those before. One that was confirmed although it was unlikely shows that the angle was known less well
 * than was thought, as it does in the filter.
 */
export function knownAgain(f: Filter, known: KnownAngle, value: number, options: ReadingOptions): KnownAngle {
	const { readings = 1, confirmed = false } = options;
	const variance = finderVariance(f) / readings;
	const miss = value - known.angle;
	const own = known.sd ** 2;
	const before = confirmed ? Math.max(own, miss ** 2 / 4 - variance) : own;
	const weight = confirmed ? 1 : soundness(miss, own + variance, wrongPart(f.scatter), readings);
	const told = finderTells(variance, before);
	if (told === null) return known;
	const after = updated({ mean: [known.angle], cov: [[before]] }, [1], value, told, weight);
	return { angle: after.mean[0]!, sd: Math.sqrt(after.cov[0]![0]!) };
}
