import type { Flat } from '../../tube/planes.ts';
import { line, type Stroke } from './drawing.ts';

/** What is pasted under the other side of a strip or template, mm. */
export const TAB = 8;

/** The flap beside the right side of a template that goes `round` mm about the tube. */
export function sides(round: number, low: number, high: number): Stroke[] {
	const slope = Math.min(3, (high - low) / 4);
	return [line('guide', [round, low], [round + TAB, low + slope], [round + TAB, high - slope], [round, high])];
}

/** An arrow to the far end, its foot at a place. */
export function arrowUp([x, y]: Flat, length = 8): Stroke[] {
	const top = y + length;
	return [line('thin', [x, y], [x, top]), line('thin', [x - 1.5, top - 2.5], [x, top], [x + 1.5, top - 2.5])];
}
