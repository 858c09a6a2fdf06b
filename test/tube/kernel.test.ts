import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { radians } from '../../src/tube/angles.ts';
import { corners, frames, shapeEnd } from '../../src/tube/frames.ts';
import type { Point } from '../../src/tube/job.ts';
import { developedLength } from '../../src/tube/marks.ts';
import { selfContact } from '../../src/tube/self-contact.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { around, tubeTurn } from '../../src/tube/turns.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { builtForward } from '../helpers/shop/kernel-tube.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube, OUT_OF_PLANE } from '../helpers/shop/tubes.ts';

let kernel: Kernel;
beforeAll(async () => {
	kernel = await Kernel.load();
});

const near = (a: Point, b: Point, within: number) => {
	expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeLessThan(within);
};
const radii = (shape: Shape) => shape.bends.map((bend) => bend.radius);

describe('a tube against the OpenCASCADE kernel', () => {
	it('has the length and volume of the solid swept along its corners', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 5 } }), (tube) => {
				const wire = kernel.spine(corners(tube), radii(tube));
				const length = developedLength(plainJob(), tube);
				expect(Math.abs(kernel.length(wire) / length - 1)).toBeLessThan(1e-12);
				const volume = kernel.rodVolume(wire, 20);
				expect(Math.abs(volume / (Math.PI * 400 * length) - 1)).toBeLessThan(1e-6);
			}),
			{ seed: 71, numRuns: 12 },
		);
	});

	it('ends where, and runs as, the kernel builds it from straights, rotations and angles', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 10 } }), (tube) => {
				const forward = builtForward(kernel, tube);
				const { end, direction } = shapeEnd(tube);
				near(end, forward.end, 1e-9);
				near(direction, forward.direction, 1e-12);
				for (const [i, straight] of frames(tube).straights.entries()) near(straight.start, forward.starts[i]!, 1e-9);
			}),
			{ seed: 72, numRuns: 60 },
		);
	});

	// Second opinion: this tube's length was computed by formula and by the kernel, 118.06477614872.
	it('gives the known length of the three-bend tube out of plane', () => {
		expect(kernel.length(kernel.spine(OUT_OF_PLANE, [6, 6, 6]))).toBeCloseTo(118.06477614872, 10);
	});
});

describe('the way the tube turns in a machine that stands still', () => {
	/**
	 * A bender: the straight tube lies along +x with its far end at +x, the die turns about a vertical axis (+z) at +y, the clamp
	 * side is at -x. Everything made lies there, swings with the die and is then drawn on toward -x by the next straight.
	 */
	function bentInMachine(shape: Shape): { made: Point[]; facing: Point[] } {
		const job = plainJob();
		const rotations = shape.bends.map((bend) => bend.rotation);
		// The start end's own frame: it, a point one ahead along straight 1, and one on the side that bend 1 bends toward.
		let tube: Point[] = [];
		// The side that bend 1 bends toward, as a line scribed along the tube that is still straight.
		let line: Point = [0, 1, 0];
		const facing: Point[] = [];
		shape.straights.forEach((length, i) => {
			// Draw on: the place in the die becomes the bend's end, then the next bend's start.
			if (i === 0)
				tube = [
					[-length, 0, 0],
					[1 - length, 0, 0],
					[-length, 1, 0],
					[0, 0, 0],
				];
			else tube = [...tube, [0, 0, 0] as Point].map((point) => kernel.moved(point, kernel.shift([-length, 0, 0])));
			if (i > 0) tube.push([0, 0, 0]);
			const bend = shape.bends[i];
			if (!bend) return;
			const turn = tubeTurn(bend.rotation, i + 1);
			// Standing at the clamp, looking along +x with +z up, the right hand points to -y: clockwise takes the top there.
			const clockwise = kernel.turn([0, 0, 0], [1, 0, 0], turn.degrees);
			const top = kernel.moved([0, 0, 1], kernel.turn([0, 0, 0], [1, 0, 0], 90));
			expect(top[1]).toBeCloseTo(-1, 12);
			const counterclockwise = kernel.turn([0, 0, 0], [1, 0, 0], -turn.degrees);
			if (turn.way !== 'none') {
				const by = turn.way === 'counterclockwise' ? counterclockwise : clockwise;
				tube = tube.map((point) => kernel.moved(point, by));
				line = kernel.moved(line, by);
			}
			// Where this bend's mark goes: from bend 1's line round the tube, clockwise looking from the start end to the far end.
			const place = around(job, rotations, i + 1);
			facing.push(kernel.moved(line, kernel.turn([0, 0, 0], [1, 0, 0], place.around.degrees)));
			const swing = kernel.turn([0, bend.radius, 0], [0, 0, 1], -bend.angle);
			tube = tube.map((point) => kernel.moved(point, swing));
		});
		return { made: tube, facing };
	}

	/** Coordinates of the tangent points in the start end's own frame. */
	function inOwnFrame([origin, ahead, aside, ...points]: Point[]): Point[] {
		const less = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
		const x = less(ahead!, origin!);
		const y = less(aside!, origin!);
		const z: Point = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
		const along = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
		return points.map((point) => {
			const from = less(point, origin!);
			return [along(from, x), along(from, y), along(from, z)];
		});
	}

	/** Bend 1 in its plane; rotations to a tenth, since under .05 none is turned. */
	const asDrawn = (tube: Shape): Shape => ({
		...tube,
		bends: tube.bends.map((bend, i) => ({ ...bend, rotation: i === 0 ? 0 : Math.round(bend.rotation * 10) / 10 })),
	});

	it('makes the tube of the drawing, not its mirror image', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 2, max: 7 } }).map(asDrawn), (tube) => {
				const { made } = bentInMachine(tube);
				const { straights } = frames(tube);
				// Bend 1's start, then the start and end of every later straight.
				const drawn = straights.flatMap((straight, i) => (i === 0 ? [straight.end] : [straight.start, straight.end]));
				const own = inOwnFrame(made);
				expect(own).toHaveLength(drawn.length);
				for (const [i, point] of drawn.entries()) near(own[i]!, point, 1e-8);
			}),
			{ seed: 73, numRuns: 40 },
		);
	});

	it('brings every mark round to the side that the die bends toward', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 2, max: 7 } }).map(asDrawn), (tube) => {
				for (const side of bentInMachine(tube).facing) near(side, [0, 1, 0], 1e-9);
			}),
			{ seed: 74, numRuns: 40 },
		);
	});
});

describe('contact with itself', () => {
	it('finds the distance that the kernel finds between the two parts it names', () => {
		let found = 0;
		const limits = { bends: { min: 3, max: 8 }, straight: { min: 40, max: 300 }, angle: { min: 60, max: 170 } };
		fc.assert(
			fc.property(anyTube({ ...limits, radius: 120 }), (tube) => {
				const contact = selfContact(tube, 60);
				if (!contact) return;
				found++;
				const at = frames(tube);
				const [a, b] = [contact.first, contact.second].map((part) => {
					if ('bend' in part) {
						const arc = at.arcs[part.bend - 1]!;
						return kernel.arc(arc.start, arc.tangent, arc.end);
					}
					const straight = at.straights[part.straight - 1]!;
					return kernel.segment(straight.start, straight.end);
				});
				expect(Math.abs(kernel.distance(a!, b!) - contact.distance)).toBeLessThan(60e-3);
			}),
			{ seed: 75, numRuns: 300 },
		);
		expect(found).toBeGreaterThan(10);
	});

	it('misses nothing: parts far enough along the tube that the kernel finds nearer are found', () => {
		let near = 0;
		const limits = { bends: { min: 4, max: 6 }, straight: { min: 100, max: 300 }, angle: { min: 60, max: 170 } };
		fc.assert(
			fc.property(anyTube({ ...limits, radius: 120 }), (tube) => {
				const { straights, arcs } = frames(tube);
				const parts = straights.flatMap((straight, i) => {
					const arc = arcs[i];
					const own = { edge: kernel.segment(straight.start, straight.end), turn: 0 };
					return arc ? [own, { edge: kernel.arc(arc.start, arc.tangent, arc.end), turn: radians(arc.angle) }] : [own];
				});
				let least = Number.POSITIVE_INFINITY;
				for (let i = 0; i < parts.length; i++) {
					let turn = 0;
					for (let j = i + 1; j < parts.length; j++) {
						// Half a turn lies between these two, whatever the places on them.
						if (turn >= Math.PI) least = Math.min(least, kernel.distance(parts[i]!.edge, parts[j]!.edge));
						turn += parts[j]!.turn;
					}
				}
				if (least >= 60) return;
				near++;
				const contact = selfContact(tube, 60);
				expect(contact).not.toBeNull();
				expect(contact!.distance).toBeLessThan(least + 60e-3);
			}),
			{ seed: 76, numRuns: 60 },
		);
		expect(near).toBeGreaterThan(5);
	});
});
