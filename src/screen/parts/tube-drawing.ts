import { type ArcFrame, frames, type StraightFrame } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import type { Shape } from '../../tube/shape.ts';
import { combine } from '../../tube/vector.ts';
import { DotCanvas, type Stroke } from './dot-canvas.ts';

/** How many points an arc is drawn through. */
const ARC_POINTS = 24;

/** Dots set and left out, over and over: what is to come is dotted. */
const DOTTED = { on: 1, period: 3 };

type Flat = readonly [x: number, y: number];

interface Part {
	stroke: Stroke;
	points: readonly Flat[];
}

/**
 * The tube as drawn, seen square on to bend 1's plane, from its start end at the left to its far end at the right: what is made in a thin line, bend `now` in a
 * thick one with its number, the rest dotted. What leads out of that plane is shortened, as in any plan. `now` past the
 * last bend: all is made.
 */
export function tubeDrawing(shape: Shape, now: number, columns: number, rows: number, ascii: boolean): string[] {
	const canvas = new DotCanvas(columns, rows);
	const parts = levelled(partsOf(shape, now));
	const place = placing(
		parts.flatMap(({ points }) => points),
		columns * 2,
		rows * 4,
	);
	// What is in hand is drawn last, over the rest.
	for (const part of parts.toSorted((a, b) => Number(a.stroke === 'now') - Number(b.stroke === 'now'))) {
		draw(canvas, part.stroke, part.points.map(place));
	}
	const bend = parts.find(({ stroke }) => stroke === 'now');
	const middle = bend?.points[Math.floor(bend.points.length / 2)];
	if (middle !== undefined) {
		const [x, y] = place(middle);
		const below = y < 4;
		[...String(now)].forEach((digit, at) => {
			canvas.label(x + 2 * at, below ? y + 4 : y - 4, digit);
		});
	}
	return canvas.text(ascii);
}

function partsOf(shape: Shape, now: number): Part[] {
	const { straights, arcs } = frames(shape);
	return straights.flatMap((straight, at): Part[] => {
		const bend = at + 1;
		const arc = arcs[at];
		const before: Part = { stroke: bend <= now ? 'made' : 'toCome', points: straightPoints(straight) };
		if (arc === undefined) return [before];
		const stroke = bend < now ? 'made' : bend === now ? 'now' : 'toCome';
		return [before, { stroke, points: arcPoints(arc) }];
	});
}

/** Turned so that the far end lies level with the start end; a closed loop stays as it is. */
function levelled(parts: readonly Part[]): Part[] {
	const [x, y] = parts.at(-1)!.points.at(-1)!;
	const length = Math.hypot(x, y);
	if (length < 1e-9) return [...parts];
	const [c, s] = [x / length, y / length];
	return parts.map((part) => ({
		...part,
		points: part.points.map(([u, v]) => [c * u + s * v, c * v - s * u] as const),
	}));
}

function flat([x, y]: Point): Flat {
	return [x, y];
}

function straightPoints({ start, end }: StraightFrame): Flat[] {
	return [flat(start), flat(end)];
}

function arcPoints({ center, radius, angle, tangent, normal }: ArcFrame): Flat[] {
	return Array.from({ length: ARC_POINTS + 1 }, (_, at) => {
		const turned = ((at / ARC_POINTS) * angle * Math.PI) / 180;
		const spoke = combine(radius * Math.sin(turned), tangent, -radius * Math.cos(turned), normal);
		return flat(combine(1, center, 1, spoke));
	});
}

/** Brings the tube into the field: one scale both ways, y up, in the middle. */
function placing(points: readonly Flat[], width: number, height: number): (point: Flat) => Flat {
	const xs = points.map(([x]) => x);
	const ys = points.map(([, y]) => y);
	const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
	// Two dots at each edge are kept for thick lines.
	const scale = Math.min((width - 4) / Math.max(right - left, 1e-9), (height - 4) / Math.max(high - low, 1e-9));
	const offsetX = (width - 1 - (right - left) * scale) / 2;
	const offsetY = (height - 1 - (high - low) * scale) / 2;
	return ([x, y]) => [Math.round(offsetX + (x - left) * scale), Math.round(offsetY + (high - y) * scale)];
}

function draw(canvas: DotCanvas, stroke: Stroke, points: readonly Flat[]): void {
	let count = 0;
	points.slice(1).forEach((to, at) => {
		const from = points[at]!;
		const steps = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]), 1);
		for (let step = 0; step < steps; step++) {
			const x = Math.round(from[0] + ((to[0] - from[0]) * step) / steps);
			const y = Math.round(from[1] + ((to[1] - from[1]) * step) / steps);
			if (stroke !== 'toCome' || count++ % DOTTED.period < DOTTED.on) canvas.dot(x, y, stroke);
			if (stroke === 'now') {
				canvas.dot(x + 1, y, stroke);
				canvas.dot(x, y + 1, stroke);
			}
		}
	});
}
