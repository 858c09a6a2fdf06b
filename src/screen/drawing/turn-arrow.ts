import { inked } from '../text/digits.ts';

/** Which way the tube is turned, as a picture that can be read from across a shop: a ring that is open where the arrow's head is. */
export type ArrowWay = 'clockwise' | 'counterclockwise';

/** Five rows as the block digits have. The head lies at the side and points down it. */
const CLOCKWISE = [' ####   ', '#    #  ', '#  #####', '#   ### ', ' ##  #  '];

/** The rows of the arrow, each glyph cell so many cells of the terminal. */
export function arrowRows(way: ArrowWay, scale: { across: number; down: number }, ink = '█'): string[] {
	const rows = way === 'clockwise' ? CLOCKWISE : CLOCKWISE.map((row) => [...row].reverse().join(''));
	return inked(rows, scale, ink);
}

export const ARROW_COLUMNS = CLOCKWISE[0]!.length;
