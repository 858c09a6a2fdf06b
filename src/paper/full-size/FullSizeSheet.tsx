import { Circle, G, Line, Path, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { joinsWords } from '../../words/full-size.ts';
import { linesOf } from '../lines.ts';
import { PaperPage } from '../PaperPage.tsx';
import { inside, type Paper, POINTS } from '../page-size.ts';
import { FAMILY, type Typeface } from '../typeface.ts';
import { LEADING, useTypeface, Words } from '../Words.tsx';
import { type Box, boxOf, type Drawing, type Look, type Stroke } from './drawing.ts';
import { NOTE_SIZE, onSheet, placedNotes } from './notes.ts';
import { RULER_HEIGHT, Ruler } from './Ruler.tsx';
import { OVERLAP, type Room, type Sheet, type Sheets } from './sheets.ts';

/** Words over the drawing, what a line of them takes, and what keeps them off it, in points. */
const WORDS_SIZE = 8.5;
const WORD_LINE = WORDS_SIZE * LEADING;
const WORDS_GAP = 6;

/** How high the words over a drawing stand, in points. */
function wordsHeight(words: string, paper: Paper, type: Typeface): number {
	return WORD_LINE * linesOf(words, inside(paper).width, { size: WORDS_SIZE }, type).length + WORDS_GAP;
}

/** The room for a drawing under its words, in mm. */
export function roomUnder(words: string, paper: Paper, type: Typeface): Room {
	const { width, height } = inside(paper);
	return { width: width / POINTS.mm, height: (height - wordsHeight(words, paper, type) - RULER_HEIGHT) / POINTS.mm };
}

/** How each line is drawn: its width in points, dashes. */
const PENS: Readonly<Record<Look, { width: number; dash?: string }>> = {
	edge: { width: 0.8 },
	thin: { width: 0.4 },
	mark: { width: 1.8 },
	center: { width: 0.4, dash: '10 3 2 3' },
	guide: { width: 0.5, dash: '4 3' },
};

export interface FullSizeSheetProps {
	paper: Paper;
	title: string;
	foot: string;
	/** Over the drawing. */
	words: string;
	/** In the room that these words leave. */
	laid: Sheets;
	sheet: Sheet;
}

/** One sheet of a drawing at full size, with a ruler that shows whether the printer kept it so. */
export function FullSizeSheet({ paper, title, foot, words, laid, sheet }: FullSizeSheetProps) {
	const { width, height } = inside(paper);
	const type = useTypeface();
	const room = roomUnder(words, paper, type);
	const window = windowOf(sheet.cell, room);
	const size = { width: room.width * POINTS.mm, height: room.height * POINTS.mm };
	const notes = placedNotes(laid.drawing.notes, { cell: sheet.cell, window, room, type });
	return (
		<PaperPage paper={paper} title={title} foot={foot}>
			<View style={{ width, height: height - 0.01 }} wrap={false}>
				<View style={{ height: wordsHeight(words, paper, type) }}>
					<Words text={words} width={width} size={WORDS_SIZE} />
				</View>
				<Svg width={size.width} height={size.height}>
					<Drawn drawing={laid.drawing} window={window} />
					{laid.sheets.length > 1 ? <Joints sheet={sheet} window={window} /> : null}
					{notes.map((note) => (
						<G key={`${note.text} ${note.x} ${note.y}`}>
							{note.covers ? (
								<Rect
									x={note.x - 1}
									y={note.y - NOTE_SIZE}
									width={note.width + 2}
									height={NOTE_SIZE * 1.3}
									fill="white"
								/>
							) : null}
							<Text x={note.x} y={note.y} style={noteStyle(note.bold)}>
								{note.text}
							</Text>
						</G>
					))}
				</Svg>
				<Ruler />
			</View>
		</PaperPage>
	);
}

const noteStyle = (bold: boolean, size = NOTE_SIZE) =>
	({ fontFamily: FAMILY, fontSize: size, fontWeight: bold ? 700 : 400 }) as const;

/** What a sheet shows: its cell, and as much around it as there is room. */
function windowOf({ left, right, low, high }: Box, room: Room): Box {
	const [x, y] = [(left + right) / 2, (low + high) / 2];
	return { left: x - room.width / 2, right: x + room.width / 2, low: y - room.height / 2, high: y + room.height / 2 };
}

/** The strokes that a sheet shows something of, all of one look as one path. */
function Drawn({ drawing, window }: { drawing: Drawing; window: Box }) {
	const seen = drawing.strokes.filter((stroke) => meets(stroke, window));
	return (Object.keys(PENS) as Look[]).map((look) => {
		const d = seen.filter((stroke) => stroke.look === look).map((stroke) => pathOf(stroke, window));
		const { width, dash } = PENS[look];
		if (d.length === 0) return null;
		return (
			<Path
				key={look}
				d={d.join(' ')}
				stroke="black"
				strokeWidth={width}
				fill="none"
				{...(dash && { strokeDasharray: dash })}
			/>
		);
	});
}

function meets({ from, steps }: Stroke, window: Box): boolean {
	// A curve lies within its corners and guides.
	const box = boxOf([from, ...steps.flatMap(({ to, guides = [] }) => [to, ...guides])]);
	return box.left <= window.right && box.right >= window.left && box.low <= window.high && box.high >= window.low;
}

function pathOf({ from, steps }: Stroke, window: Box): string {
	const at = (place: readonly [number, number]) =>
		onSheet(place, window)
			.map((value) => value.toFixed(4))
			.join(' ');
	const rest = steps.map(({ to, guides }) =>
		guides === undefined ? `L ${at(to)}` : `C ${at(guides[0])} ${at(guides[1])} ${at(to)}`,
	);
	return [`M ${at(from)}`, ...rest].join(' ');
}

/** Where the neighbors are laid on: a dashed line on each side that has one, and a register mark at each corner of the sheet's own part. */
function Joints({ sheet: { cell, beside }, window }: { sheet: Sheet; window: Box }) {
	const [left, top] = onSheet([cell.left, cell.high], window);
	const [right, low] = onSheet([cell.right, cell.low], window);
	const sides = [
		{ name: beside.left, x: [left, left], y: [top, low], at: [left + OVERLAP, (top + low) / 2], anchor: 'start' },
		{ name: beside.right, x: [right, right], y: [top, low], at: [right - OVERLAP, (top + low) / 2], anchor: 'end' },
		{ name: beside.over, x: [left, right], y: [top, top], at: [(left + right) / 2, top + 12], anchor: 'middle' },
		{ name: beside.under, x: [left, right], y: [low, low], at: [(left + right) / 2, low - 6], anchor: 'middle' },
	] as const;
	const corners = [left, right].flatMap((x) => [top, low].map((y) => [x, y] as const));
	return (
		<G>
			{sides.map(({ name, x, y, at, anchor }) =>
				name === null ? null : (
					<G key={name}>
						<Line x1={x[0]} x2={x[1]} y1={y[0]} y2={y[1]} stroke="black" strokeWidth={0.4} strokeDasharray="2 4" />
						<Text x={at[0]} y={at[1]} style={noteStyle(false, 7)} textAnchor={anchor}>
							{joinsWords(name)}
						</Text>
					</G>
				),
			)}
			{corners.map(([x, y]) => (
				<G key={`${x} ${y}`}>
					<Circle cx={x} cy={y} r={5} stroke="black" strokeWidth={0.4} fill="none" />
					<Line x1={x - 10} x2={x + 10} y1={y} y2={y} stroke="black" strokeWidth={0.4} />
					<Line x1={x} x2={x} y1={y - 10} y2={y + 10} stroke="black" strokeWidth={0.4} />
				</G>
			))}
		</G>
	);
}
