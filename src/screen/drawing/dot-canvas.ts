/** Lines drawn in dots, eight to a cell (Unicode's braille patterns), which are square on usual terminals. */
export type Stroke = 'made' | 'now' | 'toCome' | 'drawing' | 'joint';

/** The bit of each dot in a cell: column, then row. Source: Unicode, "Braille Patterns" (U+2800 + bits). */
const BITS = [
	[0x01, 0x02, 0x04, 0x40],
	[0x08, 0x10, 0x20, 0x80],
] as const;

const ASCII: Record<Stroke, string> = { made: '#', now: 'X', toCome: '.', drawing: ',', joint: ':' };

interface DotCell {
	bits: number;
	stroke: Stroke;
	/** A character that stands in the cell instead of its dots. */
	label?: string;
}

/** A field of dots: `columns` times 2 across, `rows` times 4 down, from the top left. */
export class DotCanvas {
	private readonly cells: (DotCell | undefined)[];

	constructor(
		readonly columns: number,
		readonly rows: number,
	) {
		this.cells = new Array(columns * rows);
	}

	/** Sets a dot; one outside the field is left out. */
	dot(x: number, y: number, stroke: Stroke): void {
		const cell = this.cell(x, y, stroke);
		if (cell === null) return;
		cell.bits |= BITS[x % 2]![y % 4]!;
		cell.stroke = stroke;
	}

	/** Writes a character over the cell in which the dot lies. */
	label(x: number, y: number, text: string): void {
		const cell = this.cell(x, y, 'now');
		if (cell !== null) cell.label = text;
	}

	/** The rows as text, each as wide as the field. */
	text(ascii: boolean): string[] {
		return Array.from({ length: this.rows }, (_, row) =>
			Array.from({ length: this.columns }, (_, column) =>
				cellCharacter(this.cells[row * this.columns + column], ascii),
			).join(''),
		);
	}

	private cell(x: number, y: number, stroke: Stroke): DotCell | null {
		const column = Math.floor(x / 2);
		const row = Math.floor(y / 4);
		if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return null;
		const at = row * this.columns + column;
		const cell = this.cells[at] ?? { bits: 0, stroke };
		this.cells[at] = cell;
		return cell;
	}
}

function cellCharacter(cell: DotCell | undefined, ascii: boolean): string {
	if (cell === undefined) return ' ';
	if (cell.label !== undefined) return cell.label;
	return ascii ? ASCII[cell.stroke] : String.fromCharCode(0x2800 + cell.bits);
}
