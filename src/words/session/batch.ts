import type { BendOver } from '../../session/batch/batch.ts';
import type { Pieces } from '../../session/batch/pieces.ts';
import { madeWords, meanErrorWords, scrappedWords, signed } from '../batch.ts';
import { bendName } from '../bend-name.ts';
import { foreignName } from '../foreign.ts';
import { angle } from '../numbers.ts';

/** What the page of a batch says. */
export const BATCH = {
	title: 'The batch',
	made: (pieces: Pieces): string => `${madeWords(pieces)}${scrappedWords(pieces)}.`,
	heads: ['bend', 'drawn', 'mean', 'from, to'],
	/** Over the errors of the last pieces, where there is room for any. */
	last: (room: number): string => (room === 0 ? '' : room < 4 ? 'the last' : 'the last pieces'),
} as const;

/** A bend's row: which, its angle by the drawing, its mean error, and from the least to the most. */
export function overRow({ bend, drawn, errors, mean }: BendOver): readonly [string, string, string, string] {
	const known = errors.length > 0;
	const range = known ? `${signed(Math.min(...errors))}, ${signed(Math.max(...errors))}` : '';
	return [bendName(bend), angle(drawn), known ? meanErrorWords(mean) : 'not made', range];
}

/** Which pieces are of a heat; null: of none that was told. */
export function heatPieces(heat: string | null, pieces: readonly number[]): string {
	const of = heat === null ? 'heat not told' : `heat ${foreignName(heat)}`;
	return `${of}: ${pieces.length === 1 ? 'piece' : 'pieces'} ${pieces.join(', ')}`;
}
