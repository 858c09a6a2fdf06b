import { arcPoints } from '../../tube/center-line.ts';
import { corners, frames, type StraightFrame } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import type { Joint } from '../../tube/joints.ts';
import { principalViews, type View } from '../../tube/principal-views.ts';
import type { Shape } from '../../tube/shape.ts';
import { distance, dot } from '../../tube/vector.ts';
import { viewPlaces } from '../../words/view-names.ts';
import { DotCanvas, type Stroke } from './dot-canvas.ts';

/** How many points an arc is drawn through. */
const ARC_POINTS = 24;

/** Every so manieth dot is set: what is to come is dotted, the drawing where the tube leaves it more sparsely, what an end meets closely. */
const PERIOD: Record<Stroke, number> = { made: 1, now: 1, toCome: 3, drawing: 5, joint: 2 };

/** Dots by which a corner must lie off the drawing's for both to be worth showing. */
const SEEN_APART = 3;

/** Dots between two views. */
const VIEW_GAP = 8;

/** Dots that are kept at each edge for thick lines and numbers. */
const EDGE_DOTS = 6;

type DotPlace = readonly [x: number, y: number];

interface Part {
	stroke: Stroke;
	points: readonly Point[];
}

export interface TubeDrawing {
	rows: string[];
	/** Which view is where: `front view left, top view`; empty for a flat tube's only one. */
	views: string;
	/** Whether the drawing's shape is shown beside the tube's: they can be told apart. */
	drawing: boolean;
}

/** The tube's views laid out: where each stands in the field and at what scale. */
interface DrawnViews {
	scale: number;
	/** Dots taken in both directions. */
	size: DotPlace;
	/** Top left of each view's box. */
	places: readonly DotPlace[];
	beside: boolean;
}

/** A view with its points' bounds. */
interface Framed {
	view: View;
	left: number;
	top: number;
	width: number;
	height: number;
}

/**
 * The tube to scale in at most so many columns and rows: in plane where it is flat, else in the two views that show it best, at one scale. The start end
 * is at the left where no other `views` are given, what is made is a thin line, bend `now` a thick one with its number, the rest dotted. `now` past the last
 * bend: all is made. `design` is shown too where the tube leaves it so far that it can be seen; both lie on the first straight. `met`: center lines of
 * the tubes that its ends meet.
 */
export function drawTube(
	shape: Shape,
	now: number,
	columns: number,
	rows: number,
	ascii: boolean,
	design: Shape = shape,
	views: readonly View[] = principalViews(corners(shape)),
	met: readonly Joint[] = [],
): TubeDrawing {
	const ends = met.map(({ from, to }): Part => ({ stroke: 'joint', points: [from, to] }));
	const tube = [...ends, ...strokeParts(shape, now)];
	const drawn = strokeParts(design, 0).map((part): Part => ({ ...part, stroke: 'drawing' }));
	const points = [...tube, ...drawn].flatMap((part) => part.points);
	const framed = views.map((view) => bounds(view, points));
	const sheet = sheetOf(framed, columns * 2, rows * 4);
	const canvas = new DotCanvas(columns, Math.min(rows, Math.ceil(sheet.size[1] / 4)));
	const drawing = furthestApart(corners(shape), corners(design)) * sheet.scale >= SEEN_APART;
	const parts = drawing ? [...drawn, ...tube] : tube;
	const shift = Math.max(0, Math.floor((columns * 2 - sheet.size[0]) / 2));
	for (const [at, frame] of framed.entries()) {
		const [x, y] = sheet.places[at]!;
		drawView(canvas, parts, now, placing(frame, sheet.scale, x + shift, y));
	}
	const names = framed.map(({ view }) => view.name);
	return { rows: canvas.text(ascii), views: viewPlaces(names, sheet.beside), drawing };
}

function furthestApart(some: readonly Point[], others: readonly Point[]): number {
	return Math.max(...some.map((point, at) => distance(point, others[at] ?? point)));
}

/** The same without the words. */
export function tubeDrawing(...drawn: Parameters<typeof drawTube>): string[] {
	return drawTube(...drawn).rows;
}

function strokeParts(shape: Shape, now: number): Part[] {
	const { straights, arcs } = frames(shape);
	return straights.flatMap((straight, at): Part[] => {
		const bend = at + 1;
		const arc = arcs[at];
		const before: Part = { stroke: bend <= now ? 'made' : 'toCome', points: straightPoints(straight) };
		if (arc === undefined) return [before];
		const stroke = bend < now ? 'made' : bend === now ? 'now' : 'toCome';
		return [before, { stroke, points: arcPoints(arc, ARC_POINTS) }];
	});
}

function straightPoints({ start, end }: StraightFrame): Point[] {
	return [start, end];
}

function bounds(view: View, points: readonly Point[]): Framed {
	const xs = points.map((point) => dot(point, view.right));
	const ys = points.map((point) => dot(point, view.up));
	const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
	return { view, left, top: high, width: right - left, height: high - low };
}

/** One view, or two beside or above one another: whichever shows the tube larger. */
function sheetOf(framed: readonly Framed[], width: number, height: number): DrawnViews {
	const gaps = VIEW_GAP * (framed.length - 1);
	const sum = (of: (frame: Framed) => number) => framed.reduce((total, frame) => total + of(frame), 0);
	const most = (of: (frame: Framed) => number) => Math.max(...framed.map(of));
	const edges = EDGE_DOTS * framed.length;
	const scaleFor = (wide: number, high: number, across: number, down: number) =>
		Math.min((width - across) / Math.max(wide, 1e-9), (height - down) / Math.max(high, 1e-9));
	const beside = scaleFor(
		sum((f) => f.width),
		most((f) => f.height),
		edges + gaps,
		EDGE_DOTS,
	);
	const above = scaleFor(
		most((f) => f.width),
		sum((f) => f.height),
		EDGE_DOTS,
		edges + gaps,
	);
	const scale = Math.max(0, beside, above);
	const isBeside = framed.length > 1 && beside > above;
	const boxes = framed.map((frame): DotPlace => [frame.width * scale + EDGE_DOTS, frame.height * scale + EDGE_DOTS]);
	const before = (at: number, i: 0 | 1) => boxes.slice(0, at).reduce((total, box) => total + box[i] + VIEW_GAP, 0);
	const places = boxes.map((_, at): DotPlace => (isBeside ? [before(at, 0), 0] : [0, before(at, 1)]));
	const size: DotPlace = isBeside
		? [before(boxes.length, 0) - VIEW_GAP, Math.max(...boxes.map(([, h]) => h))]
		: [Math.max(...boxes.map(([w]) => w)), before(boxes.length, 1) - VIEW_GAP];
	return { scale, size, places, beside: isBeside };
}

/** Brings a point of the tube to its dot. */
function placing({ view, left, top }: Framed, scale: number, x: number, y: number): (point: Point) => DotPlace {
	const half = EDGE_DOTS / 2;
	return (point) => [
		Math.round(x + half + (dot(point, view.right) - left) * scale),
		Math.round(y + half + (top - dot(point, view.up)) * scale),
	];
}

function drawView(canvas: DotCanvas, parts: readonly Part[], now: number, place: (point: Point) => DotPlace): void {
	// What is in hand is drawn last, over the rest.
	for (const part of parts.toSorted((a, b) => Number(a.stroke === 'now') - Number(b.stroke === 'now'))) {
		drawStroke(canvas, part.stroke, part.points.map(place));
	}
	const bend = parts.find(({ stroke }) => stroke === 'now');
	const middle = bend?.points[Math.floor(bend.points.length / 2)];
	if (middle === undefined) return;
	const [x, y] = place(middle);
	[...String(now)].forEach((digit, at) => {
		canvas.label(x + 2 * at, y < 4 ? y + 4 : y - 4, digit);
	});
}

function drawStroke(canvas: DotCanvas, stroke: Stroke, points: readonly DotPlace[]): void {
	let count = 0;
	points.slice(1).forEach((to, at) => {
		const from = points[at]!;
		const steps = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]), 1);
		for (let step = 0; step < steps; step++) {
			const x = Math.round(from[0] + ((to[0] - from[0]) * step) / steps);
			const y = Math.round(from[1] + ((to[1] - from[1]) * step) / steps);
			if (count++ % PERIOD[stroke] === 0) canvas.dot(x, y, stroke);
			if (stroke === 'now') {
				canvas.dot(x + 1, y, stroke);
				canvas.dot(x, y + 1, stroke);
			}
		}
	});
}
