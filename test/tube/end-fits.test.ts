import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersOn, frames } from '../../src/tube/frames.ts';
import { fromFar } from '../../src/tube/from-far.ts';
import type { EndName, Job, Point } from '../../src/tube/job.ts';
import { mirrored } from '../../src/tube/mirror.ts';
import { bendsToPoints } from '../../src/tube/points.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { combine, cross, dot, subtract } from '../../src/tube/vector.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const turn = fc.double({ min: -179, max: 180, noNaN: true });
const cope = fc
	.record({ turn, offset: fc.double({ min: -20, max: 20, noNaN: true }) })
	.map((some) => ({ cope: { od: 38, angle: 70, ...some } }));

const anyJob = fc
	.record({ tube: anyTube({ bends: { min: 2, max: 5 } }), points: fc.boolean(), start: cope, far: cope })
	.map(({ tube, points, start, far }) => {
		const list = tube.bends.map(({ angle, rotation }, i) => ({ straight: tube.straights[i]!, angle, rotation }));
		const last = tube.straights.at(-1)!;
		return plainJob({
			units: 'mm',
			shape: points
				? { kind: 'points', points: bendsToPoints({ bends: list, last }, 152) }
				: { kind: 'bends', bends: list, last },
			tooling: { clr: 152 },
			ends: { start, far },
		});
	});

const around = (angle: number, normal: Point, travel: Point): Point => {
	const turned = (angle * Math.PI) / 180;
	return combine(Math.cos(turned), normal, Math.sin(turned), cross(travel, normal));
};

/**
 * The joint line's direction in space. A line drawn along the tube stays on the same side of each bend's plane, so that it is carried from bend
 * to bend as the bend's own frame carries it.
 */
function jointLine(job: Job, end: EndName): Point {
	const { arcs } = frames(finishedShape(job, { value: 1 }));
	const first = arcs[0]!;
	let line = around(job.ends![end]!.cope.turn, first.normal, first.tangent);
	if (end === 'start') return line;
	for (const arc of arcs) {
		const inward = dot(line, arc.normal);
		line = combine(inward, arc.endNormal, dot(line, arc.binormal), arc.binormal);
	}
	return line;
}

/** How a direction lies to the tube, whichever way the tube itself lies. */
const againstCorners = (job: Job, line: Point): number[] => {
	const points = cornersOn(frames(finishedShape(job, { value: 1 })));
	return points.slice(1).map((point, i) => dot(line, subtract(point, points[i]!)));
};

const OTHER = { start: 'far', far: 'start' } as const;

describe('what an end meets', () => {
	it('lies in the same place round the tube from whichever end the job is begun', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const turned = fromFar(job);
				for (const end of ['start', 'far'] as const) {
					const drawn = againstCorners(job, jointLine(job, end));
					const begun = againstCorners(turned, jointLine(turned, OTHER[end]));
					// Counted from the other end, every leg runs the other way.
					for (const [i, value] of begun.reverse().entries()) expect(-value).toBeCloseTo(drawn[i]!, 5);
					expect(turned.ends![OTHER[end]]!.cope.offset).toBe(job.ends![end]!.cope.offset);
				}
			}),
			{ seed: 84, numRuns: 80 },
		);
	});

	it('lies in its place in the mirror on the part for the other hand', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const other = mirrored(job);
				for (const end of ['start', 'far'] as const) {
					const drawn = againstCorners(job, jointLine(job, end));
					for (const [i, value] of againstCorners(other, jointLine(other, end)).entries())
						expect(value).toBeCloseTo(drawn[i]!, 5);
					expect(other.ends![end]!.cope.offset).toBeCloseTo(-job.ends![end]!.cope.offset, 12);
				}
			}),
			{ seed: 85, numRuns: 80 },
		);
	});

	it('keeps an end that is cut square, and a die that a bend names', () => {
		const shape: Job['shape'] = {
			kind: 'bends',
			bends: [
				{ straight: 10, angle: 30, rotation: 0 },
				{ straight: 11, angle: 40, rotation: 90, die: '4 in' },
			],
			last: 12,
		};
		const start = { cope: { od: 2, angle: 60, offset: 0.25, turn: 30 } };
		const turned = fromFar(plainJob({ shape, ends: { start } }));
		expect(turned.ends).toEqual({ far: { cope: { od: 2, angle: 60, offset: 0.25, turn: 60 } } });
		expect(turned.shape).toMatchObject({ bends: [{ angle: 40, die: '4 in' }, { angle: 30 }] });
		expect(fromFar(turned)).toEqual(plainJob({ shape, ends: { start } }));
		expect(fromFar(plainJob())).not.toHaveProperty('ends');
	});
});
