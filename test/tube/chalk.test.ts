import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chalkPlanes } from '../../src/tube/chalk.ts';
import { corners, frames } from '../../src/tube/frames.ts';
import type { Point } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { distance } from '../../src/tube/vector.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-9);

describe('what to chalk on the bench', () => {
	it('is, of a quarter bend, what a square and a compass give', () => {
		const shape: Shape = { straights: [10, 20], bends: [{ angle: 90, rotation: 0, radius: 6 }] };
		const [plane] = chalkPlanes(shape);
		const by = (x: number, y: number) => ({ along: x, off: y, fromA: Math.hypot(x, y), fromB: Math.hypot(16 - x, y) });
		const half = 6 * Math.SQRT1_2;
		const expected = [
			{ what: 'start', bend: null, ...by(0, 0) },
			{ what: 'begins', bend: 1, ...by(10, 0) },
			{ what: 'corner', bend: 1, ...by(16, 0) },
			{ what: 'middle', bend: 1, ...by(10 + half, 6 - half) },
			{ what: 'ends', bend: 1, ...by(16, 6) },
			{ what: 'center', bend: 1, ...by(10, 6) },
			{ what: 'end', bend: null, ...by(16, 26) },
		];
		expect(plane).toMatchObject({ bends: [1, 1] });
		close(plane!.base, 16);
		for (const [i, point] of plane!.points.entries()) {
			const { what, bend, ...lengths } = expected[i]!;
			expect(point).toMatchObject({ what, bend });
			for (const [name, length] of Object.entries(lengths)) close(point[name as keyof typeof lengths], length);
		}
	});

	it('agrees with the layout: distances of corners and of where bends begin and end, plane by plane', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 8 } }), (tube) => {
				const [corner, { arcs, straights }] = [corners(tube), frames(tube)];
				const planes = chalkPlanes(tube);
				expect(
					planes.flatMap(({ bends: [first, last] }) => Array.from({ length: last - first + 1 }, (_, i) => first + i)),
				).toEqual(tube.bends.map((_, i) => i + 1));
				for (const { bends, points, base } of planes) {
					const places = points.flatMap(({ what, bend, along, off }): { drawn: Point; is: Point }[] => {
						const is = {
							start: straights[bends[0] - 1]!.start,
							end: straights[bends[1]]!.end,
							begins: arcs[(bend ?? 1) - 1]!.start,
							ends: arcs[(bend ?? 1) - 1]!.end,
							center: arcs[(bend ?? 1) - 1]!.center,
							corner: corner[bend ?? 1]!,
							middle: null,
						}[what];
						return is === null ? [] : [{ drawn: [along, off, 0], is }];
					});
					for (const one of places)
						for (const other of places) close(distance(one.drawn, other.drawn), distance(one.is, other.is));
					for (const { along, off, fromA, fromB } of points) {
						close(fromA ** 2, along ** 2 + off ** 2);
						close(fromB ** 2, (base - along) ** 2 + off ** 2);
						expect(along).toBeLessThanOrEqual(base);
					}
				}
			}),
			{ seed: 91, numRuns: 60 },
		);
	});

	it('draws bends that lie in one plane together, the opposite way off the line too, and turned ones apart', () => {
		const bend = (rotation: number) => ({ angle: 30, rotation, radius: 6 });
		const shape: Shape = { straights: [20, 20, 20, 20], bends: [bend(0), bend(180), bend(90)] };
		const planes = chalkPlanes(shape);
		expect(planes.map(({ bends }) => bends)).toEqual([
			[1, 2],
			[3, 3],
		]);
		// After a bend and its opposite the tube runs along the base line again.
		const [ends, end] = planes[0]!.points.filter(({ what, bend }) => (what === 'ends' && bend === 2) || what === 'end');
		close(ends!.off, end!.off);
		expect(planes[0]!.points.find(({ what, bend }) => what === 'middle' && bend === 1)!.off).toBeGreaterThan(0);
	});
});
