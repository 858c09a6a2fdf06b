import { View } from '@react-pdf/renderer';
import type { Typeface, TypeStyle } from './typeface.ts';
import { heightOfWords, Words } from './Words.tsx';

export interface PaperColumn {
	head: string;
	/** Its part of the table's width. */
	part: number;
	align?: 'left' | 'right' | 'center';
	size?: number;
	bold?: boolean;
	/** Boxes to write in with a pen, in place of words. */
	pen?: boolean;
}

export interface TableProps {
	columns: readonly PaperColumn[];
	/** A word or a sentence a cell; of a column for the pen, what stands there already. */
	rows: readonly (readonly string[])[];
	width: number;
	size: number;
	/** Lines to write in, one below the other, in a column for the pen, and how high one is. */
	lines?: number;
	pen?: number;
}

/** Thinner ones vanish where a page is shown on a screen. */
const RULE_WIDTH = 0.75;
const PAD = 3;
/** A line for the pen: a little over 5 mm. */
const PEN = 15;

/** Each row has its own left line: one along the table would run on below the last row of a page. */
const ROW = { flexDirection: 'row', borderBottomWidth: RULE_WIDTH, borderLeftWidth: RULE_WIDTH } as const;

const columnWidths = ({ columns, width }: Pick<TableProps, 'columns' | 'width'>): ((column: PaperColumn) => number) => {
	const parts = columns.reduce((sum, { part }) => sum + part, 0);
	return ({ part }) => (width * part) / parts;
};

/** How high a table comes out on one page. */
export function tableHeight(table: TableProps, type: Typeface): number {
	const { columns, rows, size, lines = 1, pen = PEN } = table;
	const widthOf = columnWidths(table);
	const words = (text: string, column: PaperColumn, style: TypeStyle) =>
		heightOfWords(text, widthOf(column) - 2 * PAD, style, type) + PAD;
	const head = columns.map((column) => words(column.head, column, { size: size - 1 }));
	const cells = rows.map((row) =>
		columns.map((column, i) =>
			column.pen && row[i] === '' ? lines * pen : words(row[i]!, column, { size, ...column }),
		),
	);
	return [head, ...cells].reduce((sum, row) => sum + Math.max(...row) + RULE_WIDTH, RULE_WIDTH);
}

/** Rows under a head that is told again on the next page. */
export function Table({ columns, rows, width, size, lines = 1, pen = PEN }: TableProps) {
	const widthOf = columnWidths({ columns, width });
	return (
		<View style={{ width }}>
			<View fixed wrap={false} style={{ ...ROW, borderTopWidth: RULE_WIDTH, backgroundColor: '#e8e8e8' }}>
				{columns.map((column) => (
					<TableCell key={column.head} width={widthOf(column)}>
						<Words text={column.head} width={widthOf(column) - 2 * PAD} size={size - 1} align={column.align} />
					</TableCell>
				))}
			</View>
			{rows.map((row) => (
				<View key={row.join('\n')} wrap={false} style={ROW}>
					{columns.map((column, i) => (
						<TableCell key={column.head} width={widthOf(column)} pen={column.pen}>
							{column.pen && row[i] === '' ? (
								<PenLines count={lines} width={widthOf(column)} height={pen} />
							) : (
								<Words
									text={row[i]!}
									width={widthOf(column) - 2 * PAD}
									size={column.size ?? size}
									bold={column.bold}
									align={column.align}
								/>
							)}
						</TableCell>
					))}
				</View>
			))}
		</View>
	);
}

function TableCell({ width, pen = false, children }: { width: number; pen?: boolean; children: React.ReactNode }) {
	const padding = pen ? {} : { paddingHorizontal: PAD, paddingVertical: PAD / 2 };
	return <View style={{ width, borderRightWidth: RULE_WIDTH, justifyContent: 'center', ...padding }}>{children}</View>;
}

function PenLines({ count, width, height }: { count: number; width: number; height: number }) {
	const lines = Array.from({ length: count }, (_, at) => at);
	return lines.map((line) => (
		<View
			key={line}
			style={{ width, height, ...(line > 0 && { borderTopWidth: RULE_WIDTH / 3, borderTopStyle: 'dashed' }) }}
		/>
	));
}
