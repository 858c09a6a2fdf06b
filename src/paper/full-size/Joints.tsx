import { Circle, G, Line } from '@react-pdf/renderer';
import { joinsWords } from '../../words/full-size.ts';
import { useTypeface } from '../Words.tsx';
import type { Box } from './drawing.ts';
import { Legend } from './Legend.tsx';
import { onSheet } from './placed-notes.ts';
import { OVERLAP, type Sheet } from './sheets.ts';

const JOINS_SIZE = 7;

/** Where the neighbors are laid on: a dashed line on each side that has one, and a register mark at each corner of the sheet's own part. */
export function Joints({ sheet: { cell, beside }, window }: { sheet: Sheet; window: Box }) {
	const [left, top] = onSheet([cell.left, cell.high], window);
	const [right, low] = onSheet([cell.right, cell.low], window);
	const type = useTypeface();
	// Near a corner, where the tube seldom runs and no words of its stand.
	const [across, down] = [left + 16, top + 24];
	const sides = [
		{ name: beside.left, x: [left, left], y: [top, low], at: [left + OVERLAP, down], before: 0 },
		{ name: beside.right, x: [right, right], y: [top, low], at: [right - OVERLAP, down], before: 1 },
		{ name: beside.over, x: [left, right], y: [top, top], at: [across, top + 12], before: 0 },
		{ name: beside.under, x: [left, right], y: [low, low], at: [across, low - 6], before: 0 },
	] as const;
	const corners = [left, right].flatMap((x) => [top, low].map((y) => [x, y] as const));
	return (
		<G>
			{sides.map(({ name, x, y, at, before }) => {
				if (name === null) return null;
				const text = joinsWords(name);
				const width = type.width(text, { size: JOINS_SIZE });
				return (
					<G key={name}>
						<Line x1={x[0]} x2={x[1]} y1={y[0]} y2={y[1]} stroke="black" strokeWidth={0.4} strokeDasharray="2 4" />
						<Legend x={at[0] - before * width} y={at[1]} size={JOINS_SIZE} {...{ text, width }} />
					</G>
				);
			})}
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
