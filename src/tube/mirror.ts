import { normalizeRotation } from './angles.ts';
import { toldAs } from './bent-as.ts';
import { mirroredEnds } from './end-fits.ts';
import type { Job, Point, ShapeSource } from './job.ts';

/**
 * The part for the other hand: the tube's reflection in the plane that holds straight 1 and the direction in which a first rotation of 0
 * bends. Lengths and angles stay, every rotation goes the other way about. Each check keeps its design value, `out` with the
 * other sign. Mirrored twice it is the job again.
 */
export function mirrored(job: Job): Job {
	const other = { ...job, shape: mirroredShape(job.shape), ...mirroredEnds(job.ends) };
	return toldAs(other, ({ mirror, from }) => ({ mirror: !mirror, from }));
}

function mirroredShape(shape: ShapeSource): ShapeSource {
	// Any one reflection of the points will do: how they lie in space is not told.
	if (shape.kind === 'points') return { ...shape, points: shape.points.map(([x, y, z]): Point => [x, y, 0 - z]) };
	return {
		...shape,
		bends: shape.bends.map((bend) => ({ ...bend, rotation: normalizeRotation(-bend.rotation) })),
	};
}
