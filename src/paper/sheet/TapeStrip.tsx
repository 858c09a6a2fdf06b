import { Line, Rect, Svg } from '@react-pdf/renderer';
import { Label } from '../drawing/Label.tsx';
import type { Typeface } from '../typeface.ts';
import { useTypeface } from '../Words.tsx';
import { rowsOf } from './rows-of.ts';

export interface TapeStripProps {
	/** Of the tube as cut, and what is cut off it afterwards. */
	length: number;
	trim: { start: number; end: number };
	marks: readonly { at: number; bend: number; reading: string }[];
	/** Points that there is room for. */
	width: number;
	ends: readonly [string, string];
}

const TUBE_HEIGHT = 12;
const STRIP_SIZE = 8;
const ROW = 11;
const TOP = 13;
const GAP = 5;
/** The names of the ends stand over the numbers of the bends where there is no room beside them. */
const NAMES_ABOVE = 9;

/** Where each mark lies and its reading stands, and how high the strip comes out. */
function arrangedOn({ length, marks, width, ends }: Omit<TapeStripProps, 'trim'>, type: Typeface) {
	const x = (at: number) => (at / length) * (width - 2) + 1;
	const texts = marks.map(({ at, reading }) => ({
		at: x(at),
		width: type.width(reading, { size: STRIP_SIZE, bold: true }) + GAP,
	}));
	const { rows, centers } = rowsOf(texts, width);
	const [from, to] = ends.map((end) => type.width(end, { size: STRIP_SIZE, bold: true }) + GAP) as [number, number];
	const isTight = marks.some(({ at }) => x(at) < from || x(at) > width - to);
	const top = isTight ? TOP + NAMES_ABOVE : TOP;
	return { x, top, centers, height: top + TUBE_HEIGHT + rows * ROW + 4 };
}

/** How high the strip comes out. */
export const stripHeight = (strip: TapeStripProps, type: Typeface): number => arrangedOn(strip, type).height;

/** The straight tube to scale, its marks as the tape reads them; readings that would touch stand in two rows or more. */
export function TapeStrip({ length, trim, marks, width, ends }: TapeStripProps) {
	const { x, top, centers, height } = arrangedOn({ length, marks, width, ends }, useTypeface());
	const cut = [0, trim.start, length - trim.end, length].map(x);
	return (
		<Svg width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
			<Label x={0} y={5} text={ends[0]} size={STRIP_SIZE} align="left" bold />
			<Label x={width} y={5} text={ends[1]} size={STRIP_SIZE} align="right" bold />
			<Rect x={1} y={top} width={width - 2} height={TUBE_HEIGHT} stroke="#000" strokeWidth={0.8} fill="#fff" />
			{[[cut[0]!, cut[1]!] as const, [cut[2]!, cut[3]!] as const].map(([from, to]) => (
				<Rect
					key={from}
					x={from}
					y={top}
					width={to - from}
					height={TUBE_HEIGHT}
					fill="#bbb"
					stroke="#000"
					strokeWidth={0.5}
				/>
			))}
			{marks.map(({ at, bend, reading }, i) => {
				const { center, row } = centers[i]!;
				const y = top + TUBE_HEIGHT + row * ROW + ROW / 2 + 3;
				return <MarkOn key={bend} x={x(at)} {...{ top, center, y, reading, bend }} />;
			})}
		</Svg>
	);
}

function MarkOn({
	x,
	top,
	center,
	y,
	reading,
	bend,
}: {
	x: number;
	top: number;
	center: number;
	y: number;
	reading: string;
	bend: number;
}) {
	return (
		<>
			<Line x1={x} y1={top - 3} x2={x} y2={top + TUBE_HEIGHT + 2} stroke="#000" strokeWidth={1.2} />
			<Line x1={x} y1={top + TUBE_HEIGHT + 2} x2={center} y2={y - STRIP_SIZE / 2} stroke="#000" strokeWidth={0.4} />
			<Label x={x} y={top - 7} text={`${bend}`} size={STRIP_SIZE} />
			<Label x={center} y={y} text={reading} size={STRIP_SIZE} bold />
		</>
	);
}
