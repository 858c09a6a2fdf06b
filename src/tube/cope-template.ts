import { normalizeRotation } from './angles.ts';
import { type CopeDoubt, type CutPlace, copeCut } from './cope.ts';
import type { EndName, Job } from './job.ts';
import type { Flat } from './planes.ts';
import type { Shape } from './shape.ts';
import { around } from './turns.ts';

/** A template to wrap round an end, unrolled: `[round, out]`, round the tube from bend 1's line on and out past the drawing's end. */
export interface CopeTemplate {
	end: EndName;
	/** Once round the tube: `round` goes from 0 to that, which is bend 1's line again. */
	round: number;
	/** The cut at the tube's outside, from one side of the template to the other. */
	outer: readonly Flat[];
	/** Where the longest and the shortest line of the tube lie, and how far out they reach; the cut that counts is at the outside or the inside. */
	longest: Flat;
	deepest: Flat;
	/** Where the joint line lies, and the inside of the bend next to this end. */
	joint: number;
	bend: { bend: number; round: number };
	/** How much more tube it takes than the drawing's end; below 0: less. */
	longer: number;
	doubts: readonly CopeDoubt[];
}

/** Places round the tube through which the cut is drawn: every half degree, a chord of it strays less than a hundredth of a wall. */
const DRAWN_PLACES = 720;

/** The templates of the coped ends, start end first, in the job's unit. */
export function copeTemplates(job: Job, shape: Shape): CopeTemplate[] {
	const { tube, ends } = job;
	const perDegree = (Math.PI * tube.od) / 360;
	const rotations = shape.bends.map(({ rotation }) => rotation);
	return (['start', 'far'] as const).flatMap((end): CopeTemplate[] => {
		const cope = ends?.[end]?.cope;
		if (cope === undefined) return [];
		const cut = copeCut(tube, cope, end);
		const place = (degrees: number) => upward(degrees) * perDegree;
		const spot = ({ degrees, back }: CutPlace): Flat => [place(cope.turn + degrees), -back];
		const bend = end === 'start' ? 1 : shape.bends.length;
		return [
			{
				end,
				round: 360 * perDegree,
				outer: Array.from({ length: DRAWN_PLACES + 1 }, (_, i): Flat => {
					const degrees = (360 * i) / DRAWN_PLACES;
					return [degrees * perDegree, -cut.back(degrees - cope.turn).outer];
				}),
				longest: spot(cut.shallowest),
				deepest: spot(cut.deepest),
				joint: place(cope.turn),
				bend: { bend, round: place(around(job, rotations, bend).around.degrees) },
				longer: cut.longer,
				doubts: cut.doubts,
			},
		];
	});
}

/** The same place round the tube in [0, 360). */
function upward(degrees: number): number {
	const folded = normalizeRotation(degrees);
	return folded < 0 ? folded + 360 : folded;
}
