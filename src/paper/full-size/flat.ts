import type { Flat } from '../../tube/planes.ts';
import { type DrawnNote, type PenStroke, penLine } from './drawing.ts';

/** Places on a drawing in mm: nothing here changes its arguments. */

/** From a, so far along the unit direction d. */
export const onward = (a: Flat, by: number, d: Flat): Flat => [a[0] + by * d[0], a[1] + by * d[1]];

/** The unit direction from a to b. */
export function toward(a: Flat, b: Flat): Flat {
	const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
	return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

export const reversed = ([x, y]: Flat): Flat => [0 - x, 0 - y];

/** How far words keep from what they name. */
export const WORD_GAP = 1.5;

/** Words beyond a place, on the side that lies away from another. */
export function noteBeyond(place: Flat, from: Flat, text: string): DrawnNote {
	const away = toward(from, place);
	return { at: onward(place, WORD_GAP, away), away, text };
}

/** A cross of two short lines. */
export function crossMark(at: Flat, half: number): PenStroke[] {
	return [
		penLine('thin', onward(at, -half, [1, 0]), onward(at, half, [1, 0])),
		penLine('thin', onward(at, -half, [0, 1]), onward(at, half, [0, 1])),
	];
}
