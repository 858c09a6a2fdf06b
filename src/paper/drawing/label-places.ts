import type { ViewPlace } from './tube-pieces.ts';

/** A short text that wants to stand beside a place of a drawing. Points of the page, y down. */
export interface LabelWish {
	at: ViewPlace;
	/** On which side, a unit vector. */
	toward: ViewPlace;
	width: number;
	height: number;
}

export interface LabelBox {
	left: number;
	top: number;
	right: number;
	bottom: number;
}

/** The middle of the text, and the line that leads from it to its place where it does not stand close to it. */
export interface LabelPlace {
	x: number;
	y: number;
	lead: readonly [ViewPlace, ViewPlace] | null;
}

/** What texts keep off: lines so wide to either side, and boxes. `field`: where they stand. */
export interface LabelRoom {
	lines: readonly { line: readonly ViewPlace[]; half: number }[];
	boxes: readonly LabelBox[];
	field: LabelBox;
}

/** Directions and distances that are tried for a text, and from which distance a line leads to it. */
const DIRECTIONS_TRIED = 24;
const GAPS = [2, 4, 7, 11, 16, 22, 30];
const LEADS_FROM = 7;
/** Points that are left between two texts. */
const BETWEEN = 1.5;
/** What a place costs, against one that is a point further away. */
const UNREADABLE = 1000;
const ON_TUBE = 300;
const CROSSING = 100;
const OTHER_SIDE = 5;

/**
 * Where texts stand so that none stands on the tube, on another or outside of the field, each as near to its place and its side as that leaves. One
 * after the other: what comes first has the first choice. `half`: from a place to the tube's outline.
 */
export function labelPlaces(wishes: readonly LabelWish[], half: number, around: LabelRoom): LabelPlace[] {
	const boxes = [...around.boxes];
	const lines = [...around.lines];
	return wishes.map((wish) => {
		const tried = GAPS.flatMap((gap) => waysFrom(wish.toward).map((way) => tryAt(wish, half, gap, way)));
		const costs = tried.map((each) => labelCost(each, { lines, boxes, field: around.field }));
		const best = tried[costs.indexOf(Math.min(...costs))]!;
		boxes.push(boxGrown(best.box, BETWEEN));
		if (best.place.lead !== null) lines.push({ line: best.place.lead, half: 0 });
		return best.place;
	});
}

/** The side that is wanted first. */
function waysFrom([x, y]: ViewPlace): ViewPlace[] {
	return Array.from({ length: DIRECTIONS_TRIED }, (_, i) => {
		const turn = (2 * Math.PI * i) / DIRECTIONS_TRIED;
		return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
	});
}

interface TriedPlace {
	place: LabelPlace;
	box: LabelBox;
	/** What it costs by itself. */
	own: number;
}

function tryAt({ at, toward, width, height }: LabelWish, half: number, gap: number, [dx, dy]: ViewPlace): TriedPlace {
	const reach = Math.min(width / 2 / Math.abs(dx || 1e-9), height / 2 / Math.abs(dy || 1e-9));
	const out = (by: number): ViewPlace => [at[0] + dx * by, at[1] + dy * by];
	const [x, y] = out(half + gap + reach);
	const lead = gap < LEADS_FROM ? null : ([out(half), out(half + gap - 1)] as const);
	const box = { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 };
	return { place: { x, y, lead }, box, own: gap + OTHER_SIDE * (1 - dx * toward[0] - dy * toward[1]) };
}

function labelCost({ place: { lead }, box, own }: TriedPlace, { lines, boxes, field }: LabelRoom): number {
	const isOut = box.left < field.left || box.right > field.right || box.top < field.top || box.bottom > field.bottom;
	const onText = boxes.some((other) => boxesMeet(box, other));
	const onTube = lines.some(({ line, half }) => runsThrough(line, boxGrown(box, half)));
	const leadCrosses =
		lead !== null && (boxes.some((box) => crosses(lead, box)) || lines.some(({ line }) => cutsLine(lead, line)));
	return own + (isOut || onText ? UNREADABLE : 0) + (onTube ? ON_TUBE : 0) + (leadCrosses ? CROSSING : 0);
}

const boxesMeet = (a: LabelBox, b: LabelBox): boolean =>
	a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const boxGrown = ({ left, top, right, bottom }: LabelBox, by: number): LabelBox => ({
	left: left - by,
	top: top - by,
	right: right + by,
	bottom: bottom + by,
});

const runsThrough = (line: readonly ViewPlace[], box: LabelBox): boolean =>
	line.some((to, i) => i > 0 && crosses([line[i - 1]!, to], box));

/** Whether two lines cross, the first a single piece: each has its ends on both sides of the other. */
function cutsLine([a, b]: readonly [ViewPlace, ViewPlace], line: readonly ViewPlace[]): boolean {
	const side = ([px, py]: ViewPlace, [qx, qy]: ViewPlace, [x, y]: ViewPlace) =>
		Math.sign((qx - px) * (y - py) - (qy - py) * (x - px));
	return line.some((to, i) => {
		const from = line[i - 1];
		if (from === undefined) return false;
		return side(from, to, a) !== side(from, to, b) && side(a, b, from) !== side(a, b, to);
	});
}

/** Whether a piece of a line has a part in a box: what each pair of its sides leaves of it. */
function crosses([from, to]: readonly [ViewPlace, ViewPlace], { left, top, right, bottom }: LabelBox): boolean {
	let [first, last] = [0, 1];
	for (const [axis, low, high] of [
		[0, left, right],
		[1, top, bottom],
	] as const) {
		const by = to[axis] - from[axis];
		if (by === 0) {
			if (from[axis] <= low || from[axis] >= high) return false;
			continue;
		}
		const [enters, leaves] = [(low - from[axis]) / by, (high - from[axis]) / by];
		first = Math.max(first, Math.min(enters, leaves));
		last = Math.min(last, Math.max(enters, leaves));
	}
	return first < last;
}
