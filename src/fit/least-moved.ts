import { type Correction, type CorrectionInput, correct } from './correct.ts';

/** Ever cheaper changes: nothing is moved further than needed, but as far as it is needed. */
const CHEAPER = [1, 4, 16, 64];

/** What is worth moving further for, when the design cannot be reached: a tenth of what is missed. */
const WORTH = 1.1;

/** Checks are aimed at within this part of their tolerance: the rest is for what the bends to come will be off by themselves. */
const AIM = 0.5;

/** A correction, and how dear changes were when it was found. */
export type Found = Correction & Pick<CorrectionInput, 'dear'>;

/**
 * The first correction that reaches everything, with changes as dear as they can be; where none does, the dearest that comes about
 * as near. What was found with dearer changes is where the next one starts.
 */
export function leastMoved(input: CorrectionInput): Found {
	const { straight, angle, rotation } = input.dear;
	const tried: Found[] = [];
	for (const factor of CHEAPER) {
		const dear = { straight: straight * factor, angle: angle * factor, rotation: rotation * factor };
		const found = { ...correct({ ...input, shape: tried.at(-1)?.shape ?? input.shape, dear }), dear };
		if (found.reached && found.measures.every(({ residual }) => Math.abs(residual) <= AIM)) return found;
		tried.push(found);
	}
	const misses = tried.map((found) => missOf(found, input));
	const least = Math.min(...misses);
	return tried[misses.findIndex((miss) => miss <= WORTH * least)]!;
}

/** How far from the design, in units of the tolerances: only what the finished tube shows, not what was moved for it. */
function missOf({ endOffset, endAngle, measures }: Correction, { tolerance }: CorrectionInput): number {
	const end = endOffset / tolerance.position;
	const direction = endAngle / tolerance.direction;
	return Math.hypot(end, direction, ...measures.map((measure) => measure.residual));
}
