import { Path, Svg, View } from '@react-pdf/renderer';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf, type Paper, POINTS } from '../page-size.ts';
import type { Typeface } from '../typeface.ts';
import { heightOfWords, useTypeface, Words } from '../Words.tsx';
import { type Box, boxOf, type Drawing, type PenLook, type PenStroke } from './drawing.ts';
import { Joints } from './Joints.tsx';
import { Legend } from './Legend.tsx';
import { NOTE_SIZE, onSheet, placedNotes } from './placed-notes.ts';
import { RULER_HEIGHT, Ruler } from './Ruler.tsx';
import type { Sheet, SheetRoom, Sheets } from './sheets.ts';

/** Words over the drawing, and what keeps them off it, in points. */
const WORDS_SIZE = 8.5;
const WORDS_GAP = 6;

/** How high the words over a drawing stand, in points. */
function wordsHeight(words: string, paper: Paper, type: Typeface): number {
	return heightOfWords(words, insideOf(paper).width, { size: WORDS_SIZE }, type) + WORDS_GAP;
}

/** The room for a drawing under its words, in mm. */
export function roomUnder(words: string, paper: Paper, type: Typeface): SheetRoom {
	const { width, height } = insideOf(paper);
	return { width: width / POINTS.mm, height: (height - wordsHeight(words, paper, type) - RULER_HEIGHT) / POINTS.mm };
}

/** How each line is drawn: its width in points, dashes. */
const PENS: Readonly<Record<PenLook, { width: number; dash?: string }>> = {
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
	const { width, height } = insideOf(paper);
	const type = useTypeface();
	const room = roomUnder(words, paper, type);
	const window = sheetWindow(sheet.cell, room);
	const size = { width: room.width * POINTS.mm, height: room.height * POINTS.mm };
	const notes = placedNotes(laid.drawing.notes, { cell: sheet.cell, window, room, type });
	return (
		<PaperPage paper={paper} title={title} foot={foot} fits>
			<View style={{ width, height: height - 0.01 }} wrap={false}>
				<View style={{ height: wordsHeight(words, paper, type) }}>
					<Words text={words} width={width} size={WORDS_SIZE} />
				</View>
				<Svg width={size.width} height={size.height}>
					<PenStrokes drawing={laid.drawing} window={window} />
					{laid.sheets.length > 1 ? <Joints sheet={sheet} window={window} /> : null}
					{notes.map((note) => (
						<Legend key={`${note.text} ${note.x} ${note.y}`} {...note} size={NOTE_SIZE} />
					))}
				</Svg>
				<Ruler />
			</View>
		</PaperPage>
	);
}

/** What a sheet shows: its cell, and as much around it as there is room. */
function sheetWindow({ left, right, low, high }: Box, room: SheetRoom): Box {
	const [x, y] = [(left + right) / 2, (low + high) / 2];
	return { left: x - room.width / 2, right: x + room.width / 2, low: y - room.height / 2, high: y + room.height / 2 };
}

/** The strokes that a sheet shows something of, all of one look as one path. */
function PenStrokes({ drawing, window }: { drawing: Drawing; window: Box }) {
	const seen = drawing.strokes.filter((stroke) => strokeMeets(stroke, window));
	return (Object.keys(PENS) as PenLook[]).map((look) => {
		const d = seen.filter((stroke) => stroke.look === look).map((stroke) => svgPath(stroke, window));
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

function strokeMeets({ from, steps }: PenStroke, window: Box): boolean {
	// A curve lies within its corners and guides.
	const box = boxOf([from, ...steps.flatMap(({ to, guides = [] }) => [to, ...guides])]);
	return box.left <= window.right && box.right >= window.left && box.low <= window.high && box.high >= window.low;
}

function svgPath({ from, steps }: PenStroke, window: Box): string {
	const at = (place: readonly [number, number]) =>
		onSheet(place, window)
			.map((value) => value.toFixed(4))
			.join(' ');
	const rest = steps.map(({ to, guides }) =>
		guides === undefined ? `L ${at(to)}` : `C ${at(guides[0])} ${at(guides[1])} ${at(to)}`,
	);
	return [`M ${at(from)}`, ...rest].join(' ');
}
