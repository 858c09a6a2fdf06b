import { describe, expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import type { Cope, EndName, Job, Point } from '../../src/tube/job.ts';
import type { Flat } from '../../src/tube/planes.ts';
import { profiles } from '../../src/tube/profile.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { combine, cross, dot, norm, step, subtract } from '../../src/tube/vector.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const apart = (a: Flat, b: Flat) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function coped(ends: Job['ends'], turn: number) {
	const bends = [
		[20, 50, 0],
		[15, 40, 180],
		[15, 30, turn],
	] as const;
	const job = plainJob({ ends, shape: byBends(bends, 20) });
	return { job, planes: profiles(job, finishedShape(job, { value: 1 })) };
}

/**
 * How far each place of a drawn cut lies from the other tube's outside, the tube being drawn half a diameter round its center line. The other
 * tube as the contract has it: its line passes `offset` to the right of the joint line, looking out of the end, and its angle opens toward that line.
 */
function offTheOther(end: EndName, cope: Cope, turn: number): number {
	const { job, planes } = coped({ [end]: { cope } }, turn);
	const { plane, copes } = end === 'start' ? planes[0]! : planes.at(-1)!;
	const { near, behind } = copes[0]!;
	const [first] = plane.arcs;
	const arc = end === 'start' ? first! : plane.arcs.at(-1)!;
	const straight = end === 'start' ? plane.straights[0]! : plane.straights.at(-1)!;
	const place = end === 'start' ? straight.start : straight.end;
	const { direction } = straight;
	const out = end === 'start' ? combine(-1, direction, 0, direction) : direction;
	// Bend 1's inside carried to this end: back from the last bend's by the sum of rotations.
	const carried = end === 'start' ? 0 : -(180 + turn);
	const inside = end === 'start' ? arc.normal : arc.endNormal;
	const spoke = (degrees: number) => combine(Math.cos(rad(degrees)), inside, Math.sin(rad(degrees)), arc.binormal);
	const joint = spoke(carried + cope.turn);
	const axis = combine(-Math.cos(rad(cope.angle)), out, Math.sin(rad(cope.angle)), joint);
	const center = step(place, cope.offset, cross(out, joint));
	const towardEye = first!.binormal;
	const offs = [near, behind].flatMap((half, which) =>
		half.map(([along, off]) => {
			const inPlane = step(step(plane.straights[0]!.start, along, plane.straights[0]!.direction), off, first!.normal);
			const aside = dot(subtract(inPlane, place), cross(towardEye, direction));
			const depth = Math.sqrt(Math.max(0, (job.tube.od / 2) ** 2 - aside ** 2)) * (which === 0 ? 1 : -1);
			const point: Point = step(inPlane, depth, towardEye);
			return Math.abs(norm(cross(subtract(point, center), axis)) - cope.od / 2);
		}),
	);
	return Math.max(...offs);
}

describe('a coped end in the profile', () => {
	it.each(['start', 'far'] as const)('lies on the outside of the tube that the %s end meets', (end) => {
		const { uniform } = draws(31);
		for (let i = 0; i < 20; i++) {
			// A wider tube, which this one does not pass by.
			const cope = { od: uniform(2, 4), angle: uniform(40, 90), offset: uniform(-0.2, 0.2), turn: uniform(-180, 180) };
			expect(offTheOther(end, cope, [0, 180, 70, -110][i % 4]!)).toBeLessThan(1e-6);
		}
	});

	it('has both edges of the tube end at the cut, half a diameter from the center line', () => {
		const cope = { od: 2, angle: 60, offset: 0, turn: 20 };
		const { planes } = coped({ start: { cope }, far: { cope } }, 180);
		const [{ lines, copes, starts, stops }] = planes as [(typeof planes)[0]];
		const edges = lines.flatMap(({ what, curve }) => (what === 'edge' && curve.kind === 'straight' ? [curve] : []));
		expect(copes.map(({ end }) => end)).toEqual(['start', 'far']);
		for (const [drawn, { near, behind }] of [
			[edges.slice(0, 2).map(({ from }) => from), copes[0]!],
			[edges.slice(-2).map(({ to }) => to), copes[1]!],
		] as const) {
			const corners = [near[0]!, near.at(-1)!];
			expect(Math.min(...corners.map((corner) => apart(corner, drawn[0]!)))).toBeLessThan(1e-12);
			expect(Math.min(...corners.map((corner) => apart(corner, drawn[1]!)))).toBeLessThan(1e-12);
			expect(apart(drawn[0]!, drawn[1]!)).toBeGreaterThan(1.5 - 1e-9);
			expect([apart(behind[0]!, corners[0]!), apart(behind.at(-1)!, corners[1]!)]).toEqual([
				expect.closeTo(0, 12),
				expect.closeTo(0, 12),
			]);
		}
		// The drawing's ends stay where they are.
		const square = coped(undefined, 180).planes[0]!;
		expect([starts, stops]).toEqual([square.starts, square.stops]);
		expect(square.copes).toEqual([]);
	});

	it('is in the plane of that end alone', () => {
		const cope = { od: 2, angle: 90, offset: 0, turn: 0 };
		const { planes } = coped({ start: { cope }, far: { cope } }, 90);
		expect(planes.map(({ copes }) => copes.map(({ end }) => end))).toEqual([['start'], ['far']]);
	});
});
