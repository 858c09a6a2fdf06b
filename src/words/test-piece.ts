import type { ImpossiblePiece } from '../fit/test-piece.ts';

/** Why a test piece tells nothing, and how its legs are read. */
export function impossiblePieceWords({ growth, stretch }: ImpossiblePiece): string {
	return (
		`These readings cannot all be right: they give a radius of ${(growth * 100).toFixed(0)} % of the die's and a stretch of ` +
		`${(stretch * 100).toFixed(0)} %. The legs are read on the outside, from each end to where the straight edges cross.`
	);
}
