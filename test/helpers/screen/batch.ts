import { batchOf } from '../../../src/session/batch/batch.ts';
import type { PieceFacts } from '../../../src/session/batch/piece-facts.ts';
import { countedPieces } from '../../../src/session/batch/pieces.ts';
import type { SessionNote } from '../../../src/session/protocol/notes.ts';
import { SESSION } from './asks.ts';

/** A piece of a batch, cut and marked as the one before it. */
export const PIECE: SessionNote = { ...SESSION, piece: 8, quantity: 10, heat: 'H 4471', alike: true };
/** The same where what was learned since would move its marks. */
export const PIECE_HELD: SessionNote = { ...PIECE, wouldMove: 9 / 32 };
/** The job has changed since the piece before. */
export const PIECE_MOVED: SessionNote = { ...PIECE, alike: false };

export const LAST_PIECE: SessionNote = { ...PIECE, piece: 10 };

/** Errors of four bends over seven pieces; the second bend's rise. */
const ERRORS = [
	[0.1, -0.3, -0.2, 0],
	[-0.2, -0.2, 0.1, 0.1],
	[0.2, -0.1, -0.1, -0.2],
	[-0.1, 0.1, 0.2, 0.1],
	[0, 0.2, -0.2, 0],
	[0.1, 0.3, 0, -0.1],
	[-0.1, 0.5, 0.1, 0.2],
];
const DRAWN = [42, 48, 48, 42];

const finished = ERRORS.map(
	(errors, i): PieceFacts => ({
		id: `piece-${i + 1}`,
		piece: i + 1,
		status: 'done',
		heat: i < 4 ? 'H 4470' : 'H 4471',
		pulls: i === 0 ? 9 : 5,
		seconds: 60 * (i === 0 ? 40 : 14),
		bends: errors.map((error, bend) => ({ drawn: DRAWN[bend]!, error, sd: 0.1 })),
	}),
);

const rows = (open: number) => [
	...finished.map(({ piece }) => ({ status: 'done' as const, piece: piece! })),
	...Array.from({ length: open }, (_, i) => ({ status: 'open' as const, piece: 8 + i })),
	{ status: 'scrapped' as const, piece: 3 },
];

/** Seven made of ten; and as many begun as are still wanted. */
export const BATCH = batchOf(countedPieces(rows(0), 10), finished, []);
export const BATCH_WAITS = batchOf(countedPieces(rows(3), 10), finished, [{ id: 'piece-8', piece: 8 }]);
