import type { Point } from '../../../src/tube/job.ts';
import type { Shape } from '../../../src/tube/shape.ts';
import type { Kernel } from './kernel.ts';

const less = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Where the kernel's own turns and shifts put every straight's start and end, the far end and its direction. */
export function builtForward(kernel: Kernel, shape: Shape) {
	let [at, ahead, aside]: [Point, Point, Point] = [
		[0, 0, 0],
		[1, 0, 0],
		[0, 1, 0],
	];
	const [starts, ends, directions]: [Point[], Point[], Point[]] = [[], [], []];
	// `ahead` and `aside` are points one unit from `at`, so that every transform takes the frame along.
	const carry = (by: ReturnType<Kernel['turn']>) => {
		[at, ahead, aside] = [kernel.moved(at, by), kernel.moved(ahead, by), kernel.moved(aside, by)];
	};
	shape.straights.forEach((length, i) => {
		const direction = less(ahead, at);
		starts.push(at);
		directions.push(direction);
		carry(kernel.shift([length * direction[0], length * direction[1], length * direction[2]]));
		ends.push(at);
		const bend = shape.bends[i];
		if (!bend) return;
		carry(kernel.turn(at, direction, bend.rotation));
		const normal = less(aside, at);
		const center: Point = [
			at[0] + bend.radius * normal[0],
			at[1] + bend.radius * normal[1],
			at[2] + bend.radius * normal[2],
		];
		const axis: Point = [
			direction[1] * normal[2] - direction[2] * normal[1],
			direction[2] * normal[0] - direction[0] * normal[2],
			direction[0] * normal[1] - direction[1] * normal[0],
		];
		carry(kernel.turn(center, axis, bend.angle));
	});
	return { starts, ends, directions, end: at, direction: less(ahead, at) };
}
