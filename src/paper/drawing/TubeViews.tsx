import { Line, Polygon, Polyline, Svg } from '@react-pdf/renderer';
import { centerLine } from '../../tube/center-line.ts';
import type { Frames } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import { outermost, type Ring, ringRise, sizeAlong } from '../../tube/overall.ts';
import type { View } from '../../tube/principal-views.ts';
import { dot } from '../../tube/vector.ts';
import { VIEW_NAMES } from '../../words/view-names.ts';
import { useTypeface } from '../Words.tsx';
import { arranged, type BoxSize, type Edge } from './arranged.ts';
import { Label } from './Label.tsx';
import type { LabelBox } from './label-places.ts';
import { type Placing, TubeLabels } from './TubeLabels.tsx';
import { seenIn, tubePieces, type ViewPlace } from './tube-pieces.ts';

export interface TubeViewsProps {
	at: Frames;
	od: number;
	views: readonly SizedView[];
	/** Points that there is room for. */
	room: BoxSize;
	/** Another tube's center line, drawn over it as a broken line. */
	over?: readonly Point[];
}

/** A view, and what is written beside its sizes to the right and up; null: no size. */
export interface SizedView {
	view: View;
	sizes: { right: string; up: string } | null;
}

/** Points round each view, the words at its left not counted. */
const ROUND_VIEW: Edge = { left: 16, right: 14, top: 22, bottom: 24 };
const LABEL = 7;
/** Steps in which an arc is drawn: none of them is seen. */
export const ARC_STEPS = 16;
/** A tube that is drawn no wider than this has no room for a line in its middle. */
const CENTER_FROM = 5;
/** From the tube to the line of a size, and half of the tick at its end. */
const OFF = 9;
const HALF_TICK = 3;

/** Views of a tube beside or above one another, all at one scale, with their names, their sizes over all and the bends' numbers. */
export function TubeViews({ at, od, views, room, over = [] }: TubeViewsProps) {
	const bounds = views.map(({ view }) => boundsOf(at, od, view, over));
	const type = useTypeface();
	const told = Math.max(...views.map(({ sizes }) => (sizes === null ? 0 : type.width(sizes.up, { size: LABEL }))));
	const { scale, places, height } = arranged(bounds, room, { ...ROUND_VIEW, left: ROUND_VIEW.left + told });
	return (
		<Svg width={room.width} height={height} viewBox={`0 0 ${room.width} ${height}`}>
			{views.map((sized, i) => {
				const { left, top } = bounds[i]!;
				const { x, y, until } = places[i]!;
				const place = ([right, up]: ViewPlace): ViewPlace => [x + (right - left) * scale, y + (top - up) * scale];
				return <OneView key={sized.view.name} {...{ at, od, over, place, scale, until, ...sized }} box={bounds[i]!} />;
			})}
		</Svg>
	);
}

interface ViewBox extends BoxSize {
	left: number;
	top: number;
}

function boundsOf(at: Frames, od: number, { right, up }: View, over: readonly Point[]): ViewBox {
	const [across, upright] = [extentOf(at, od, right, over), extentOf(at, od, up, over)];
	return {
		left: across.least,
		top: upright.most,
		width: across.most - across.least,
		height: upright.most - upright.least,
	};
}

/** From where to where the tube's outside reaches along a direction, and the other tube's center line. */
function extentOf(at: Frames, od: number, axis: Point, over: readonly Point[]): { least: number; most: number } {
	const { top, bottom } = outermost(at, od, axis);
	const reach = ({ place, direction }: Ring, side: number) =>
		dot(place, axis) + ((side * od) / 2) * ringRise(direction, axis);
	const others = over.map((point) => dot(point, axis));
	return { least: Math.min(reach(bottom, -1), ...others), most: Math.max(reach(top, 1), ...others) };
}

interface OneViewProps extends SizedView, Placing {
	over: readonly Point[];
	box: ViewBox;
	/** How far right there is room for it. */
	until: number;
}

function OneView({ at, od, over, view, sizes, box, until, scale, place }: OneViewProps) {
	const seen = seenIn(view);
	const [x, y] = place([box.left, box.top]);
	const [right, bottom] = [x + box.width * scale, y + box.height * scale];
	return (
		<>
			<Label x={(x + right) / 2} y={y - 16} text={VIEW_NAMES[view.name]} size={LABEL} />
			{tubePieces(at, od, view).map(({ kind, line, near }) => (
				<PieceOf key={`${near} ${line[0]!.join()}`} {...{ kind }} line={line.map(place)} wide={od * scale} />
			))}
			{od * scale > CENTER_FROM && (
				<Polyline
					points={svgPoints(centerLine(at, ARC_STEPS).map(seen).map(place))}
					strokeWidth={0.35}
					stroke="#000"
					strokeDasharray="6 2 1 2"
				/>
			)}
			{over.length > 0 && (
				<Polyline points={svgPoints(over.map(seen).map(place))} strokeWidth={1} stroke="#000" strokeDasharray="2 2" />
			)}
			<TubeLabels
				{...{ at, od, view, scale, place }}
				{...roomRound({ left: x, top: y, right, bottom }, until, sizes !== null)}
			/>
			{sizes && (
				<>
					<SizeLine from={[x, bottom + OFF]} to={[right, bottom + OFF]} text={sizes.right} />
					<SizeLine from={[x - OFF, bottom]} to={[x - OFF, y]} text={sizes.up} upright />
				</>
			)}
		</>
	);
}

/** Where labels may stand round a view, and the lines of its sizes that are in their way. */
function roomRound({ left, top, right, bottom }: LabelBox, until: number, isSized: boolean) {
	const field = {
		left: left - ROUND_VIEW.left + 2,
		right: until - 2,
		top: top - ROUND_VIEW.top + 11,
		bottom: bottom + ROUND_VIEW.bottom - 2,
	};
	const taken = [
		{ left: left - ROUND_VIEW.left, right: left - OFF + HALF_TICK, top, bottom },
		{ left, right, top: bottom + OFF - HALF_TICK, bottom: bottom + ROUND_VIEW.bottom },
	];
	return { field, taken: isSized ? taken : [] };
}

/** Half the width of an outline. */
const THIN = 0.5;

/** White over black that is a little wider: what is left of the black is the outline. */
function PieceOf({ kind, line, wide }: { kind: 'side' | 'round'; line: readonly ViewPlace[]; wide: number }) {
	const points = svgPoints(line);
	if (kind === 'round') return <Polygon points={points} fill="#fff" stroke="#000" strokeWidth={2 * THIN} />;
	return (
		<>
			<Polyline points={points} stroke="#000" strokeWidth={wide + 2 * THIN} />
			<Polyline points={svgPoints(longer(line))} stroke="#fff" strokeWidth={Math.max(wide - 2 * THIN, THIN)} />
		</>
	);
}

/** A hair longer at both ends, so that no seam is seen between two pieces. */
function longer(line: readonly ViewPlace[]): ViewPlace[] {
	const beyond = (end: ViewPlace, before: ViewPlace): ViewPlace => {
		const [dx, dy] = [end[0] - before[0], end[1] - before[1]];
		const length = Math.hypot(dx, dy) || 1;
		return [end[0] + (dx / length) * THIN, end[1] + (dy / length) * THIN];
	};
	return [beyond(line[0]!, line[1]!), ...line.slice(1, -1), beyond(line.at(-1)!, line.at(-2)!)];
}

function SizeLine({
	from,
	to,
	text: said,
	upright = false,
}: {
	from: ViewPlace;
	to: ViewPlace;
	text: string;
	upright?: boolean;
}) {
	const tick = (at: ViewPlace): readonly [ViewPlace, ViewPlace] =>
		upright
			? [
					[at[0] - HALF_TICK, at[1]],
					[at[0] + HALF_TICK, at[1]],
				]
			: [
					[at[0], at[1] - HALF_TICK],
					[at[0], at[1] + HALF_TICK],
				];
	const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
	return (
		<>
			{[[from, to] as const, tick(from), tick(to)].map(([a, b]) => (
				<Line key={`${a.join()} ${b.join()}`} x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} strokeWidth={0.5} stroke="#000" />
			))}
			{upright ? (
				<Label x={x - 4} y={y} text={said} size={LABEL} align="right" />
			) : (
				<Label x={x} y={y + 7} text={said} size={LABEL} />
			)}
		</>
	);
}

const svgPoints = (points: readonly ViewPlace[]): string =>
	points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' ');

/** The sizes over all in a view, outside to outside. */
export function sizesOf(at: Frames, od: number, { right, up }: View, told: (length: number) => string) {
	return { right: told(sizeAlong(at, od, right)), up: told(sizeAlong(at, od, up)) };
}
