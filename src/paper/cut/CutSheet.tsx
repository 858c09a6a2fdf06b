import { G, Line, Rect, Svg, Text, View } from '@react-pdf/renderer';
import { type AlikeSticks, alikeSticks, type SawnStick, toCut } from '../../tube/cut-list.ts';
import {
	CUT_LIST,
	nothingWords,
	PIECE_HEADS,
	pieceLetter,
	sawingWords,
	stickWords,
	sumWords,
	TICK_BOX,
	tubeHeading,
	weightWords,
} from '../../words/cut-list.ts';
import { foreignName } from '../../words/foreign.ts';
import { type Ruled, tapeValue } from '../../words/lengths.ts';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf, type Paper } from '../page-size.ts';
import { type PaperColumn, Table, tableHeight } from '../Table.tsx';
import { FAMILY } from '../typeface.ts';
import { useTypeface, Words } from '../Words.tsx';
import type { CutOnPaper } from './cut-on-paper.ts';

export interface CutListProps {
	lists: readonly CutOnPaper[];
	paper: Paper;
	foot: string;
}

/** What to saw from which sticks, tube by tube: to take to the saw, with a box to tick for every stick. */
export function CutSheet({ lists, paper, foot }: CutListProps) {
	const { width } = insideOf(paper);
	return (
		<PaperPage paper={paper} title={CUT_LIST} foot={foot}>
			{lists.map((of) => (
				<View key={tubeHeading(of.tube, of.units)} style={{ marginBottom: 14 }}>
					<TubeList of={of} width={width} />
				</View>
			))}
		</PaperPage>
	);
}

/** Letter, job, length, then counts. */
const PIECE_PARTS = [7, 36, 13, 9, 9, 10, 9, 7] as const;
const COLUMNS = PIECE_HEADS.map(
	(head, i): PaperColumn => ({ head, part: PIECE_PARTS[i]!, align: i < 2 ? 'left' : 'right' }),
);

/** A table no higher than this stands on one page with its heading: half of a page. */
const SHORT = 330;

function TubeList({ of: { tube, units, pieces, list, kerf }, width }: { of: CutOnPaper; width: number }) {
	const by = pieces[0]!.job;
	const rows = pieces.map((piece, i) => [
		pieceLetter(i),
		foreignName(piece.job.name),
		tapeValue(piece.length, by),
		...[piece.wanted, piece.finished, piece.begun, piece.scrapped, toCut(piece)].map(String),
	]);
	const table = { columns: COLUMNS, rows, width, size: 8 };
	const longest = Math.max(0, ...(list?.sticks ?? []).map(({ length }) => length));
	return (
		<>
			<View wrap={tableHeight(table, useTypeface()) > SHORT}>
				<Words text={tubeHeading(tube, units)} width={width} size={11} bold />
				<View style={{ marginVertical: 5 }}>
					<Table {...table} />
				</View>
			</View>
			{list === null ? (
				<Words text={nothingWords(pieces)} width={width} size={9} />
			) : (
				<>
					<Words text={`${sawingWords(kerf, by)} ${TICK_BOX}`} width={width} size={9} />
					{alikeSticks(list.sticks).map((alike) => (
						<Sticks key={alike.first} alike={alike} longest={longest} by={by} width={width} />
					))}
					<View wrap={false} style={{ marginTop: 6 }}>
						<Words text={sumWords(list, by)} width={width} size={9} />
						<Words text={weightWords(tube, list, units)} width={width} size={9} />
					</View>
				</>
			)}
		</>
	);
}

/** In points: the bar that stands for a stick, a box to tick, and what keeps boxes apart. */
const BAR = 16;
const BOX = 10;
const BOX_PITCH = 14;

interface SticksProps {
	alike: AlikeSticks;
	longest: number;
	by: Ruled;
	width: number;
}

/** Sticks that are sawn alike: where, to scale, and a box for each. */
function Sticks({ alike: { stick, first, last }, longest, by, width }: SticksProps) {
	const boxes = Math.min(last - first + 1, Math.floor(width / BOX_PITCH));
	const name = first === last ? `${first}` : `${first}-${last}`;
	return (
		<View wrap={false} style={{ marginTop: 7 }}>
			<Words text={`${name}.  ${stickWords(stick, by)}`} width={width} size={9} />
			<Bar stick={stick} scale={(width - 2) / longest} width={width} />
			<Svg width={width} height={BOX + 3}>
				{Array.from({ length: boxes }, (_, i) => 1 + i * BOX_PITCH).map((x) => (
					<Rect key={x} x={x} y={2} width={BOX} height={BOX} stroke="black" strokeWidth={0.6} fill="none" />
				))}
			</Svg>
		</View>
	);
}

function Bar({ stick, scale, width }: { stick: SawnStick; scale: number; width: number }) {
	const type = useTypeface();
	const size = 8;
	let from = 0;
	return (
		<Svg width={width} height={BAR + 2}>
			<Rect x={1} y={1} width={stick.length * scale} height={BAR} stroke="black" strokeWidth={0.8} fill="none" />
			{stick.cuts.map(({ piece, mark }) => {
				const middle = 1 + ((from + mark) / 2) * scale;
				const x = 1 + mark * scale;
				const room = (mark - from) * scale;
				from = mark;
				const letter = pieceLetter(piece);
				const wide = type.width(letter, { size, bold: true });
				return (
					<G key={mark}>
						<Line x1={x} x2={x} y1={1} y2={1 + BAR} stroke="black" strokeWidth={1.2} />
						{wide < room ? (
							<Text
								x={middle - wide / 2}
								y={1 + BAR / 2 + 0.36 * size}
								style={{ fontFamily: FAMILY, fontSize: size, fontWeight: 700 }}
							>
								{letter}
							</Text>
						) : null}
					</G>
				);
			})}
		</Svg>
	);
}
