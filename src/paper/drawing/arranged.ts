import { sumOf } from '../../maths/list.ts';
/** How large a thing is, in its own unit. */
export interface BoxSize {
	width: number;
	height: number;
}

/** Where each box lies, in points from the top left, and how many points one unit is drawn as. */
export interface Arranged {
	scale: number;
	/** `until`: how far right its part of the field goes. */
	places: { x: number; y: number; until: number }[];
	height: number;
}

/** Points round each box, for its name and sizes. */
export interface Edge {
	left: number;
	right: number;
	top: number;
	bottom: number;
}

/** Rows of boxes, each row's numbers from left to right. */
type Rows = readonly (readonly number[])[];

/** Ways to put up to three boxes. */
const ARRANGEMENTS: readonly (readonly Rows[])[] = [
	[],
	[[[0]]],
	[[[0, 1]], [[0], [1]]],
	[[[0, 1, 2]], [[0, 1], [2]], [[0], [1, 2]], [[0], [1], [2]]],
];

/** Boxes in a field at one scale, as large as one of the ways to put them allows. */
export function arranged(boxes: readonly BoxSize[], { width, height }: BoxSize, edge: Edge): Arranged {
	const [across, down] = [edge.left + edge.right, edge.top + edge.bottom];
	const most = (numbers: readonly number[]) => Math.max(...numbers);
	const of = (row: readonly number[]) => ({
		wide: sumOf(row.map((i) => boxes[i]!.width)),
		high: most(row.map((i) => boxes[i]!.height)),
	});
	const scaleOf = (rows: Rows) =>
		Math.min(
			(height - rows.length * down) / sumOf(rows.map((row) => of(row).high)),
			...rows.map((row) => (width - row.length * across) / of(row).wide),
		);
	const rows = ARRANGEMENTS[boxes.length]!.reduce((best, way) => (scaleOf(way) > scaleOf(best) ? way : best));
	const scale = scaleOf(rows);
	const places: Arranged['places'] = [];
	let y = 0;
	for (const row of rows) {
		const gap = (width - of(row).wide * scale - row.length * across) / row.length;
		let x = gap / 2;
		for (const i of row) {
			const next = x + boxes[i]!.width * scale + across + gap;
			places[i] = { x: x + edge.left, y: y + edge.top, until: next - gap / 2 };
			x = next;
		}
		y += of(row).high * scale + down;
	}
	return { scale, places, height: y };
}
