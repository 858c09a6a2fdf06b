import { arcPoints } from '../../tube/center-line.ts';
import type { Frames } from '../../tube/frames.ts';
import type { View } from '../../tube/principal-views.ts';
import { combine, cross } from '../../tube/vector.ts';
import { useTypeface } from '../Words.tsx';
import { Label } from './Label.tsx';
import { seenIn, type ViewPlace } from './tube-pieces.ts';

/** A view of a tube, and where its places lie on the page. */
export interface Placing {
	at: Frames;
	od: number;
	view: View;
	scale: number;
	place: (flat: ViewPlace) => ViewPlace;
}

/** Size of the numbers of the bends, and of the word at the end that is told from. */
const LABEL = 7;
const STARTS = 'START';
const SMALL = 5.5;

/** Beside each bend, square to the tube, on the side away from its center; those that would stand on one another are told together. */
export function BendNumbers({ at, od, view, scale, place }: Placing) {
	const seen = seenIn(view);
	const far = (od / 2) * scale + 6;
	const spots = at.arcs.map((arc, i) => {
		const points = arcPoints(arc, 4).map((point) => place(seen(point)));
		const [before, middle, after] = [points[1]!, points[2]!, points[3]!];
		const center = place(seen(arc.center));
		const along: ViewPlace = [after[0] - before[0], after[1] - before[1]];
		const length = Math.hypot(...along);
		const side: ViewPlace = length < 0.5 ? [0, -1] : [-along[1] / length, along[0] / length];
		const away = side[0] * (middle[0] - center[0]) + side[1] * (middle[1] - center[1]);
		const sign = Math.abs(away) < 0.5 ? (side[1] > 0 ? -1 : 1) : Math.sign(away);
		return { x: middle[0] + sign * far * side[0], y: middle[1] + sign * far * side[1], numbers: [i + 1] };
	});
	return together(spots).map(({ x, y, numbers }) => (
		<Label key={numbers.join()} x={x} y={y} text={numbers.join(', ')} size={LABEL} bold />
	));
}

/** Beside the start end, on the side that bend 1 bends to, where its number does not stand. */
export function StartLabel({ at, od, view, scale, place }: Placing) {
	const type = useTypeface();
	const seen = seenIn(view);
	const { start, end, direction } = at.straights[0]!;
	const [from, to] = [place(seen(start)), place(seen(end))];
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
	const half = type.width(STARTS, { size: SMALL }) / 2;
	// Seen from its end there is no side.
	if (long < SMALL) return null;
	const along: ViewPlace = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const bend = place(seen(combine(1, start, 1, cross(at.arcs[0]!.binormal, direction))));
	const [x, y] = [bend[0] - from[0], bend[1] - from[1]];
	const side = Math.sign(along[0] * y - along[1] * x) || -1;
	const [across, up]: ViewPlace = [-side * along[1], side * along[0]];
	// Level words reach further to the side of a tube that stands.
	const off = (od / 2) * scale + Math.abs(up) * SMALL * 0.7 + Math.abs(across) * (half + 2);
	const inward = Math.min(half * Math.abs(along[0]) + SMALL * 0.5 * Math.abs(along[1]), long / 2);
	return (
		<Label
			x={from[0] + inward * along[0] + off * across}
			y={from[1] + inward * along[1] + off * up}
			text={STARTS}
			size={SMALL}
		/>
	);
}

interface Spot {
	x: number;
	y: number;
	numbers: readonly number[];
}

function together(spots: readonly Spot[]): Spot[] {
	const kept: Spot[] = [];
	for (const spot of spots) {
		const at = kept.findIndex(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) < LABEL);
		if (at < 0) kept.push(spot);
		else kept[at] = { ...kept[at]!, numbers: [...kept[at]!.numbers, ...spot.numbers] };
	}
	return kept;
}
