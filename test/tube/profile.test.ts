import { describe, expect, it } from 'vitest';
import type { Flat } from '../../src/tube/planes.ts';
import { type Across, type FlatCurve, profiles } from '../../src/tube/profile.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const middle = ({ from, to }: Across): Flat => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
const apart = (a: Flat, b: Flat) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Straight 1 of 20 along the base line, then a 90 about (20, 6) on a 6 in die. */
const drawn = (changes: Parameters<typeof plainJob>[0]) => {
	const job = plainJob(changes);
	return profiles(job, finishedShape(job, { value: 1 }));
};

describe('the profile of a plane', () => {
	it('has the mark as far before the bend as the die is offset, on the straight', () => {
		const [plane] = drawn({ tooling: { markOffset: 2 }, trim: { start: 3 }, shape: byBends([[20, 90, 0]], 20) });
		expect(middle(plane!.bends[0]!.mark!)).toEqual([18, 0]);
		expect(apart(plane!.bends[0]!.mark!.from, plane!.bends[0]!.mark!.to)).toBeCloseTo(1.5, 9);
	});

	it('has it in the arc where the bend begins before the index line, by the length of tube that comes to lie there', () => {
		const shape = byBends([[20, 90, 0]], 20);
		const [plane] = drawn({ tooling: { markOffset: -1.5, stretch: 0.004 }, shape });
		// An arc of that length about the bend's center.
		const turn = (1.5 * 1.004) / 6;
		const [x, y] = middle(plane!.bends[0]!.mark!);
		expect(x).toBeCloseTo(20 + 6 * Math.sin(turn), 9);
		expect(y).toBeCloseTo(6 - 6 * Math.cos(turn), 9);
		const [far] = drawn({ tooling: { markOffset: -10 }, shape });
		expect(far!.bends[0]!.mark).toBeNull();
		const [near] = drawn({ tooling: { markOffset: 20.5 }, trim: { start: 3 }, shape });
		expect(near!.bends[0]!.mark).toBeNull();
	});

	it('has inner and outer lines half a diameter off the center line, and no inner one where there is none', () => {
		const radii = (clr: number) => {
			const [plane] = drawn({ tooling: { clr }, shape: byBends([[20, 90, 0]], 20) });
			return plane!.lines.flatMap(({ what, curve }): [string, number][] =>
				curve.kind === 'arc' ? [[what, curve.radius]] : [],
			);
		};
		expect(radii(6)).toEqual([
			['center', 6],
			['outer', 6.75],
			['inner', 5.25],
		]);
		expect(radii(0.75)).toEqual([
			['center', 0.75],
			['outer', 1.5],
		]);
	});

	it("bends to the base line's off side first, and back where a bend goes the opposite way", () => {
		const [plane] = drawn({
			shape: byBends(
				[
					[10, 30, 0],
					[10, 45, 180],
				],
				10,
			),
		});
		const sweeps = plane!.lines.flatMap(({ what, curve }): FlatCurve[] => (what === 'center' ? [curve] : []));
		expect(sweeps.flatMap((curve) => (curve.kind === 'arc' ? [curve.sweep] : []))).toEqual([30, -45]);
	});
});
