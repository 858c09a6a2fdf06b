import { G, Path, Rect, Svg, Text, View } from '@react-pdf/renderer';
import type { ChalkPlane } from '../../tube/chalk.ts';
import { CHALK_COLUMNS, chalkPointWords, chalkWords, planeWords } from '../../words/chalk.ts';
import { FULL_SIZE, MAP_HEAD, mapWords, profileWords } from '../../words/full-size.ts';
import { tapeValue } from '../../words/lengths.ts';
import type { JobOnPaper } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf, type Paper } from '../page-size.ts';
import { Table } from '../Table.tsx';
import { FAMILY } from '../typeface.ts';
import { Words } from '../Words.tsx';
import type { PenStroke } from './drawing.ts';
import { Ruler } from './Ruler.tsx';
import { MOST_SHEETS, type Sheets } from './sheets.ts';

/** The map takes at most so much of the page, points. */
const MAP_HEIGHT = 220;

export interface ProfileMapProps {
	of: JobOnPaper;
	paper: Paper;
	title: string;
	laid: Sheets;
	isPrinted: boolean;
	chalk: ChalkPlane;
	planes: number;
}

/** Which sheet lies where, and the plane's chalk-out table. */
export function ProfileMap({
	of: { job, shape, foot },
	paper,
	title,
	laid,
	isPrinted,
	chalk,
	planes,
}: ProfileMapProps) {
	const { width } = insideOf(paper);
	const [first, last] = chalk.bends;
	const radii = shape.bends.slice(first - 1, last).map(({ radius }, i) => ({ bend: first + i, radius }));
	return (
		<PaperPage paper={paper} title={title} foot={foot}>
			<Words text={profileWords(radii, job)} width={width} size={9} />
			<Words text={mapWords(laid.sheets.length, MOST_SHEETS)} width={width} size={9} />
			{isPrinted ? <Words text={FULL_SIZE.joining} width={width} size={9} /> : null}
			{isPrinted ? <SheetMap laid={laid} width={width} /> : null}
			<View style={{ marginBottom: 8 }}>
				<Ruler />
			</View>
			<Words text={MAP_HEAD} width={width} size={10} bold />
			<Words text={chalkWords(radii, job)} width={width} size={8.5} />
			<Words text={planeWords(chalk, planes, job)} width={width} size={8.5} />
			<View style={{ marginTop: 6 }}>
				<Table
					columns={CHALK_COLUMNS.map((head, i) => ({ head, part: i === 0 ? 2 : 1, align: i === 0 ? 'left' : 'right' }))}
					rows={chalk.points.map((point) => [
						chalkPointWords(point),
						...[point.along, point.off, point.fromA, point.fromB].map((length) => tapeValue(length, job)),
					])}
					width={width}
					size={8.5}
				/>
			</View>
		</PaperPage>
	);
}

/** The plane small, with its sheets' names. */
function SheetMap({ laid, width }: { laid: Sheets; width: number }) {
	const { cell } = laid.sheets[0]!;
	const [wide, tall] = [cell.right - cell.left, cell.high - cell.low];
	const left = Math.min(...laid.sheets.map((sheet) => sheet.cell.left));
	const high = Math.max(...laid.sheets.map((sheet) => sheet.cell.high));
	const right = Math.max(...laid.sheets.map((sheet) => sheet.cell.right));
	const low = Math.min(...laid.sheets.map((sheet) => sheet.cell.low));
	const scale = Math.min(width / (right - left), MAP_HEIGHT / (high - low));
	const at = ([x, y]: readonly [number, number]) => [(x - left) * scale, (high - y) * scale] as const;
	const name = Math.min(10, (wide * scale) / 3);
	return (
		<Svg width={width} height={(high - low) * scale + 1} style={{ marginVertical: 6 }}>
			{laid.sheets.map((sheet) => {
				const [x, y] = at([sheet.cell.left, sheet.cell.high]);
				return (
					<G key={sheet.name}>
						<Rect x={x} y={y} width={wide * scale} height={tall * scale} stroke="black" strokeWidth={0.3} fill="none" />
						<Text x={x + 2} y={y + name} style={{ fontFamily: FAMILY, fontSize: name }}>
							{sheet.name}
						</Text>
					</G>
				);
			})}
			<Path
				d={laid.drawing.strokes
					.filter(({ look }) => look === 'edge' || look === 'mark')
					.map((stroke) => small(stroke, at))
					.join(' ')}
				stroke="black"
				strokeWidth={0.6}
				fill="none"
			/>
		</Svg>
	);
}

function small(
	{ from, steps }: PenStroke,
	at: (place: readonly [number, number]) => readonly [number, number],
): string {
	const put = (place: readonly [number, number]) =>
		at(place)
			.map((value) => value.toFixed(2))
			.join(' ');
	const rest = steps.map(({ to, guides }) =>
		guides ? `C ${put(guides[0])} ${put(guides[1])} ${put(to)}` : `L ${put(to)}`,
	);
	return [`M ${put(from)}`, ...rest].join(' ');
}
