import { clamp } from '../../maths/scalar.ts';

/** Where a text begins that stands centered at a column, as far as the window has room at its sides. */
export const centeredStart = (at: number, text: string, columns: number): number =>
	clamp(at - Math.floor(text.length / 2), 0, columns - text.length);

/** The first of `count` rows to show in so much room, with the one in hand in the middle as far as there are rows on both sides. */
export const firstShown = (inHand: number, room: number, count: number): number =>
	clamp(inHand - Math.floor(room / 2), 0, Math.max(0, count - room));
