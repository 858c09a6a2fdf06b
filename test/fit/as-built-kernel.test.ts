import { beforeAll, describe, expect, it } from 'vitest';
import { estimateAsBuilt, marginal, rawTubeOf, spreadOf } from '../../src/fit/as-built.ts';
import type { TubeReading } from '../../src/fit/built-tube.ts';
import { type RawTube, uncutShape } from '../../src/fit/raw-tube.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import type { Point } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { builtForward } from '../helpers/shop/kernel-tube.ts';
import { angleReading, dropReading, legReading, spanReading, toldBend, tooling } from '../helpers/shop/made-tube.ts';

let kernel: Kernel;
beforeAll(async () => {
	kernel = await Kernel.load();
});

const PIECE = 75;
const rad = Math.PI / 180;

/** Straights and arcs by the sentences of the trade alone: marks count raw tube, an arc keeps what it was wrapped with. */
function asLaid({ bends, stretch, markOffset }: RawTube): Shape {
	let used = 0;
	const straights: number[] = [];
	for (const { mark, radius, wrapped } of bends) {
		const begins = mark + markOffset;
		straights.push(begins - used);
		used = begins + (radius * wrapped * rad) / (1 + stretch);
	}
	return {
		straights: [...straights, PIECE - used],
		bends: bends.map(({ angle, rotation, radius, wrapped }) => ({
			angle,
			rotation,
			radius: (radius * wrapped) / angle,
		})),
	};
}

const along = (a: Point, by: number, d: Point): Point => [a[0] + by * d[0], a[1] + by * d[1], a[2] + by * d[2]];

/** What tape, straight edge and finder read on a tube, by the kernel's own distances and angles. */
function measured(tube: RawTube) {
	const { starts, ends, directions } = builtForward(kernel, asLaid(tube));
	/** The straight edge laid along a straight, far beyond the tube at both ends. */
	const edgeAlong = (straight: number) => {
		const [at, d] = [starts[straight - 1]!, directions[straight - 1]!];
		return kernel.segment(along(at, -500, d), along(at, 500, d));
	};
	/** The sharp corner of a bend: as far along the straight before it as brings it onto the line of the one after it. */
	const corner = (bend: number): Point => {
		const [end, d] = [ends[bend - 1]!, directions[bend - 1]!];
		const off = kernel.pointDistance(end, edgeAlong(bend + 1));
		const found = along(end, off / Math.sin(kernel.angle(d, directions[bend]!) * rad), d);
		expect(kernel.pointDistance(found, edgeAlong(bend + 1))).toBeLessThan(1e-9);
		return found;
	};
	const length = (a: Point, b: Point) => kernel.length(kernel.wire([kernel.segment(a, b)]));
	return {
		drop: (from: number, to: number) => kernel.pointDistance(starts[to - 1]!, edgeAlong(from)),
		dropToEnd: (from: number) => kernel.pointDistance(ends.at(-1)!, edgeAlong(from)),
		angle: (j: number, k: number) => kernel.angle(directions[j - 1]!, directions[k - 1]!),
		leg: (bend: number) => length(starts[bend - 1]!, ends[bend - 1]!),
		span: (from: number, to: number) => length(corner(from), corner(to)),
		/** Of a flat tube above straight 1: the least distance from a line far above tells the highest place of an arc. */
		crown: (bend: number) => {
			const arc = kernel.arc(ends[bend - 1]!, directions[bend - 1]!, starts[bend]!);
			return 100 - kernel.distance(arc, kernel.segment([-500, 100, 0], [500, 100, 0]));
		},
	};
}

interface Planned {
	mark: number;
	angle: number;
	rotation: number;
}

/** Three bends as drawn, and as made: off in every number, one of them opened again, on a radius that grew. */
function drawn(draw: Draw): { planned: Planned[]; truth: RawTube } {
	const planned = [12, 30, 48].map((mark, i) => ({
		mark,
		angle: draw.uniform(25, 80),
		// Well out of the plane before: near it an angle hardly says by how much.
		rotation: i === 0 ? 0 : draw.uniform(40, 140) * (draw.happens(0.5) ? 1 : -1),
	}));
	const bends = planned.map(({ mark, angle, rotation }, i) => {
		const made = angle + draw.normal(0, 0.8);
		return {
			mark: mark + draw.normal(0, 0.03),
			angle: made,
			rotation: i === 0 ? 0 : rotation + draw.normal(0, 1),
			radius: 6 * Math.exp(draw.normal(0.01, 0.006)),
			wrapped: i === 1 ? made + 2.5 : made,
		};
	});
	return { planned, truth: { bends, stretch: draw.uniform(0, 0.008), markOffset: 0.125, radius: 6 } };
}

/** Every kind of reading with what the kernel measures for it. */
const readingsOf = (tube: RawTube, sd: { length: number; angle: number }): TubeReading[] => {
	const by = measured(tube);
	return [
		dropReading(1, { straight: 3 }, by.drop(1, 3), sd.length),
		dropReading(4, { straight: 2 }, by.drop(4, 2), sd.length),
		dropReading(2, { straight: 4, at: 'end' }, by.dropToEnd(2), sd.length),
		spanReading(1, 2, by.span(1, 2), sd.length),
		spanReading(1, 3, by.span(1, 3), sd.length),
		...[1, 2, 3].map((bend) => legReading(bend, by.leg(bend), sd.length)),
		...[1, 2, 3].map((j) => angleReading(j, j + 1, by.angle(j, j + 1), sd.angle)),
		angleReading(1, 3, by.angle(1, 3), sd.angle),
		angleReading(2, 4, by.angle(2, 4), sd.angle),
	];
};

describe('a tube as it was made, against the OpenCASCADE kernel', () => {
	it('has the drops, spans, angles and legs that the kernel measures on it', () => {
		const draw = draws(11);
		for (let k = 0; k < 8; k++) {
			const { truth } = drawn(draw);
			const shape = uncutShape(truth, PIECE);
			for (const { value, of } of readingsOf(truth, { length: 1, angle: 1 })) expect(of(shape)).toBeCloseTo(value, 8);
		}
	});

	it('has the crown that the kernel finds, opened bends and their grown radius included', () => {
		for (const wrapped of [34, 37]) {
			const flat: RawTube = {
				bends: [
					{ mark: 12, angle: 18, rotation: 0, radius: 6.1, wrapped: 18.5 },
					{ mark: 30, angle: 34, rotation: 180, radius: 6.05, wrapped },
					{ mark: 48, angle: 17, rotation: 180, radius: 6, wrapped: 17 },
				],
				stretch: 0.004,
				markOffset: -0.1,
				radius: 6,
			};
			const check = dropReading(1, { bend: 2 }, null, 1);
			expect(check.of(uncutShape(flat, PIECE))).toBeCloseTo(measured(flat).crown(2), 8);
		}
	});

	it('is found from readings that the kernel took on it, told wrongly by what hands and finder err', () => {
		const draw = draws(12);
		for (let k = 0; k < 5; k++) {
			const { planned, truth } = drawn(draw);
			const told = planned.map(({ mark, angle, rotation }, i) =>
				toldBend(mark, angle, rotation, {
					mark: { value: mark, sd: 0.03 },
					angle: { value: angle, sd: 0.8 },
					rotation: { value: rotation, sd: i === 0 ? 1e-6 : 1 },
					relievedFrom: i === 1 ? truth.bends[1]!.wrapped : null,
				}),
			);
			const readings = readingsOf(truth, { length: 1e-4, angle: 1e-3 });
			const made = { ...tooling(), markOffset: truth.markOffset };
			const built = estimateAsBuilt({ bends: told, tooling: made, piece: PIECE, readings });
			for (const [i, bend] of truth.bends.entries()) {
				expect(Math.abs(marginal(built, 'angle', i).value - bend.angle)).toBeLessThan(0.004);
				expect(Math.abs(marginal(built, 'rotation', i).value - bend.rotation)).toBeLessThan(0.01);
				expect(Math.abs(marginal(built, 'mark', i).value - bend.mark)).toBeLessThan(0.005);
			}
			// The estimate rebuilt by the kernel reads as the estimate says it would, and as the tube did.
			const again = readingsOf(rawTubeOf(built), { length: 1, angle: 1 });
			const { mean } = spreadOf(built, (tube) => readings.map(({ of }) => of(uncutShape(tube, PIECE))));
			for (const [i, { value }] of again.entries()) {
				expect(mean[i]).toBeCloseTo(value, 8);
				expect(Math.abs(value - readings[i]!.value)).toBeLessThan(4 * readings[i]!.sd);
			}
		}
	});
});
