import { scaleLinear } from 'd3-scale';
import { padded } from '../../terminal/width.ts';
import { type Line, line } from '../text/line.ts';
import { centeredStart } from '../text/window.ts';
import { DotCanvas, type Stroke } from './dot-canvas.ts';

/** A place in a plot, in its own units. */
export interface PlotPlace {
	x: number;
	y: number;
}

/** What is plotted. A mark is one character over the place; several in one cell become `*`. */
export interface Plot {
	x: PlotAxis;
	y: PlotAxis;
	/** Each filled lightly between `low` and `high`. */
	bands?: readonly (readonly { x: number; low: number; high: number }[])[];
	lines?: readonly (readonly PlotPlace[])[];
	/** Level lines, dotted. */
	levels?: readonly number[];
	marks: readonly (PlotPlace & { mark: string })[];
}

export interface PlotAxis {
	label: string;
	/** The values that have to be there; rounded outwards to ticks. */
	values: readonly number[];
	/** What stands at these whole numbers instead of them: session names, kinds. */
	names?: readonly string[];
	/** It counts: no tick stands between whole numbers. */
	counts?: true;
}

/** Rows of the label above, the axis, its ticks, and its label. */
const OTHER_ROWS = 4;
/** Columns, and rows, that a tick's number should have for itself. */
const TICK_COLUMNS = 10;
const TICK_ROWS = 3;
/** Every so manieth dot across and down is set in a band; along its edges every other one. */
const BAND_EVERY = 4;
const EDGE_EVERY = 2;
const LEVEL_EVERY = 4;

/** The plot in at most so many columns and rows, in dots; the marks are characters, so that no color is needed. */
export function plotLines(plot: Plot, columns: number, rows: number, ascii: boolean): Line[] {
	const height = Math.max(1, rows - OTHER_ROWS);
	// A name has to be there whatever room it has; a number stands for those beside it.
	const y = scaled(plot.y, Math.max(2, plot.y.names === undefined ? Math.floor(height / TICK_ROWS) : height));
	const names = y.ticks.map((tick) => tickName(plot.y, tick, y.name));
	const left = Math.max(...names.map((name) => name.length)) + 1;
	const width = Math.max(2, columns - left - 1);
	const x = scaled(plot.x, Math.max(2, Math.floor(width / TICK_COLUMNS)));
	const canvas = new DotCanvas(width, height);
	const across = x.scale.copy().range([0, 2 * width - 1]);
	const up = y.scale.copy().range([4 * height - 1, 0]);
	drawPlot(
		canvas,
		plot,
		(value) => Math.round(across(value)),
		(value) => Math.round(up(value)),
	);
	const rowOf = (value: number) => Math.floor(Math.round(up(value)) / 4);
	const labels = new Map(y.ticks.map((tick, i) => [rowOf(tick), names[i]!]));
	const body = canvas.text(ascii).map((text, row) => {
		const name = labels.get(row);
		return line(`${(name ?? '').padStart(left)}${name === undefined ? '│' : '┤'}${text}`.trimEnd());
	});
	const columnOf = (value: number) => Math.floor(Math.round(across(value)) / 2);
	const shown = x.ticks.map((tick) => ({ at: columnOf(tick), text: tickName(plot.x, tick, x.name) }));
	return [
		line(plot.y.label, 'quiet'),
		...body,
		line(
			`${' '.repeat(left)}┴${axis(
				shown.map(({ at }) => at),
				width,
			)}`,
		),
		line(tickRow(shown, left + 1, columns)),
		line(plot.x.label.padStart(columns), 'quiet'),
	].slice(0, rows);
}

function scaled({ values, names, counts }: PlotAxis, count: number) {
	const [low, high] = [Math.min(...values), Math.max(...values)];
	const scale = scaleLinear([low === high ? low - 1 : low, low === high ? high + 1 : high], [0, 1]);
	if (names !== undefined) {
		// Half a step beyond each end, so that the outermost stand clear of the edges.
		const every = Math.max(1, Math.ceil(names.length / count));
		scale.domain([low - 0.5, high + 0.5]);
		const ticks = names.map((_, i) => i).filter((i) => (names.length - 1 - i) % every === 0);
		return { scale, ticks, name: String };
	}
	scale.nice(count);
	if (counts) return { scale, ticks: scale.ticks(count).filter(Number.isInteger), name: String };
	return { scale, ticks: scale.ticks(count), name: scale.tickFormat(count) };
}

function tickName({ names }: PlotAxis, tick: number, format: (value: number) => string): string {
	// A minus sign of another kind is no ASCII, and no number that one types.
	return names?.[tick] ?? format(tick).replace('−', '-');
}

function axis(at: readonly number[], width: number): string {
	return Array.from({ length: width }, (_, column) => (at.includes(column) ? '┴' : '─')).join('');
}

/** The numbers under their ticks, one that would touch the one before left out. */
function tickRow(shown: readonly { at: number; text: string }[], left: number, columns: number): string {
	let row = '';
	for (const { at, text } of shown) {
		const from = centeredStart(left + at, text, columns);
		if (row !== '' && from < row.length + 1) continue;
		row = `${padded(row, from)}${text}`;
	}
	return row;
}

type ToDot = (value: number) => number;

function drawPlot(canvas: DotCanvas, { bands = [], lines = [], levels = [], marks }: Plot, x: ToDot, y: ToDot): void {
	for (const band of bands) for (const [i, to] of band.entries()) if (i > 0) fill(canvas, band[i - 1]!, to, x, y);
	for (const level of levels) {
		for (let dot = 0; dot < 2 * canvas.columns; dot += LEVEL_EVERY) canvas.dot(dot, y(level), 'drawing');
	}
	for (const places of lines) {
		for (const [i, to] of places.entries()) if (i > 0) stroke(canvas, places[i - 1]!, to, x, y, 'made');
	}
	const taken = new Map<string, string>();
	for (const { x: across, y: up, mark } of marks) {
		const [left, top] = [x(across), y(up)];
		const cell = `${Math.floor(left / 2)} ${Math.floor(top / 4)}`;
		const shown = (taken.get(cell) ?? mark) === mark ? mark : '*';
		taken.set(cell, shown);
		canvas.label(left, top, shown);
	}
}

function fill(
	canvas: DotCanvas,
	from: { x: number; low: number; high: number },
	to: { x: number; low: number; high: number },
	x: ToDot,
	y: ToDot,
): void {
	const [left, right] = [x(from.x), x(to.x)];
	const between = (a: number, b: number, dot: number) => y(a + ((b - a) * (dot - left)) / Math.max(1, right - left));
	for (let dot = left; dot <= right; dot++) {
		const [top, bottom] = [between(from.high, to.high, dot), between(from.low, to.low, dot)];
		if (dot % EDGE_EVERY === 0) for (const edge of [top, bottom]) canvas.dot(dot, Math.round(edge), 'toCome');
		if (dot % BAND_EVERY !== 0) continue;
		// From the same rows everywhere, so that the dots stand in lines.
		for (let down = BAND_EVERY * Math.ceil(top / BAND_EVERY); down < bottom; down += BAND_EVERY) {
			canvas.dot(dot, down, 'toCome');
		}
	}
}

function stroke(canvas: DotCanvas, from: PlotPlace, to: PlotPlace, x: ToDot, y: ToDot, as: Stroke): void {
	const [left, top, right, bottom] = [x(from.x), y(from.y), x(to.x), y(to.y)];
	const steps = Math.max(1, Math.abs(right - left), Math.abs(bottom - top));
	for (let step = 0; step <= steps; step++) {
		canvas.dot(
			Math.round(left + ((right - left) * step) / steps),
			Math.round(top + ((bottom - top) * step) / steps),
			as,
		);
	}
}
