import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frames } from '../../src/tube/frames.ts';
import { type Offset, offsetByAngle, offsetByRun } from '../../src/tube/offset.ts';

/** Where a tube with this offset runs: how far its last straight lies beside its first, and the run between tangents. */
function led({ angle, straight }: Offset, radius: number) {
	const bends = [0, 180].map((rotation) => ({ angle, rotation, radius }));
	const { straights } = frames({ straights: [0, straight, 1], bends });
	const [along, across] = straights[2]!.start;
	return { rise: across, run: along, direction: straights[2]!.direction };
}

describe('an offset', () => {
	// Between corners the distance is the rise times the cosecant of the angle; common practice, no source.
	it.each([
		[10, 30, 20],
		[10, 45, 14.142],
		[12, 22.5, 31.358],
		[7, 90, 7],
	])('of a rise of %d at %d° has its corners %d apart', (rise, angle, apart) => {
		expect(offsetByAngle(rise, angle, 0)!.straight).toBeCloseTo(apart, 3);
	});

	it('given by its angle or by the run that belongs to it is the same', () => {
		const { angle, straight } = offsetByRun(3, 4, 1, 'corners')!;
		// The triangle with sides 3, 4 and 5.
		expect(angle).toBeCloseTo(36.8699, 4);
		expect(straight).toBeCloseTo(5 - 2 * (1 / 3), 9);
	});

	it('leads the tube over by the rise, parallel to where it was', () => {
		const numbers = fc.record({
			rise: fc.double({ min: 0.5, max: 40, noNaN: true }),
			run: fc.double({ min: 0.5, max: 80, noNaN: true }),
			radius: fc.double({ min: 0.5, max: 12, noNaN: true }),
		});
		fc.assert(
			fc.property(
				numbers,
				fc.constantFrom('corners' as const, 'tangents' as const),
				({ rise, run, radius }, between) => {
					const offset = offsetByRun(rise, run, radius, between);
					if (offset === null) return;
					const tube = led(offset, radius);
					expect(tube.rise).toBeCloseTo(rise, 6);
					expect(tube.direction[0]).toBeCloseTo(1, 9);
					const back = between === 'corners' ? 2 * radius * Math.tan((offset.angle * Math.PI) / 360) : 0;
					expect(tube.run - back).toBeCloseTo(run, 6);
				},
			),
		);
	});

	it('with no room for it between tangents is none', () => {
		expect(offsetByRun(10, 5, 6, 'tangents')).toBeNull();
		expect(offsetByRun(10, 0, 1, 'tangents')).toBeNull();
	});

	it('needs a rise, and an angle below a straight line', () => {
		expect(offsetByRun(0, 5, 1, 'corners')).toBeNull();
		expect(offsetByAngle(2, 180, 1)).toBeNull();
		expect(offsetByAngle(2, 0, 1)).toBeNull();
		expect(offsetByAngle(-2, 30, 1)).toBeNull();
	});

	it('tells by a straight below 0 that the radius leaves no room', () => {
		expect(offsetByAngle(1, 60, 6)!.straight).toBeLessThan(0);
	});
});
