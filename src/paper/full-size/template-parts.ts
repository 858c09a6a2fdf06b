import type { Flat } from '../../tube/planes.ts';
import { FULL_SIZE } from '../../words/full-size.ts';
import { type Drawing, type PenStroke, penLine } from './drawing.ts';

/** What is pasted under the other side of a strip or template, mm. */
export const GLUE_TAB = 8;

/** The flap beside the right side of a template that goes `round` mm about the tube. */
export function sides(round: number, low: number, high: number): PenStroke[] {
	const slope = Math.min(3, (high - low) / 4);
	return [
		penLine('guide', [round, low], [round + GLUE_TAB, low + slope], [round + GLUE_TAB, high - slope], [round, high]),
	];
}

/** Once round a tube on which the words beside the arrow have no room, mm. */
const NARROWEST_ROUND = 60;

/** Where the arrow may stand, parts of the way round; and what it takes with its words to either side, mm. */
const PLACES = [0.3, 0.6, 0.05] as const;
const TAKES = { left: 2, right: 24 } as const;

/** An arrow to the far end of the tube, which is up, with its words; `round` mm wide, its foot so high, off the line at `line`. */
export function toFar(round: number, y: number, line: number | null = null): Drawing {
	const free = PLACES.map((part) => part * round).find(
		(x) => line === null || line < x - TAKES.left || line > x + TAKES.right,
	);
	const [x, top] = [free ?? PLACES[0] * round, y + 8];
	const at: Flat = round < NARROWEST_ROUND ? [round + GLUE_TAB + 2, y + 4] : [x + 3, y + 4];
	return {
		strokes: [penLine('thin', [x, y], [x, top]), penLine('thin', [x - 1.5, top - 2.5], [x, top], [x + 1.5, top - 2.5])],
		notes: [{ at, away: [1, 0], text: FULL_SIZE.toFar }],
	};
}
