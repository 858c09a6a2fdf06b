import { describe, expect, it } from 'vitest';
import { batchOf } from '../../../src/session/batch/batch.ts';
import { heatOf } from '../../../src/session/batch/given.ts';
import { type PieceFacts, pieceFacts } from '../../../src/session/batch/piece-facts.ts';
import { countedPieces } from '../../../src/session/batch/pieces.ts';
import type { Event } from '../../../src/session/log/events.ts';
import { evolve, initial } from '../../../src/session/log/fold.ts';
import { sessionView } from '../../../src/session/report/views.ts';
import { walkRule, walkWords } from '../../../src/words/batch.ts';
import { begin, give, startOf } from '../../helpers/session/session-run.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';
import { draws } from '../../helpers/shop/plain-shop.ts';

/** Finished pieces of one bend of 40 degrees whose errors these are, known to a tenth. */
const made = (errors: readonly number[]): PieceFacts[] =>
	errors.map((error, i) => ({
		id: `${i}`,
		piece: i + 1,
		status: 'done',
		heat: null,
		pulls: 2 + (i % 2),
		seconds: 60 * (i + 1),
		bends: [{ drawn: 40, error, sd: 0.1 }],
	}));

const pieces = (done: number, open: number, wanted: number) =>
	countedPieces(
		[...Array(done).fill('done'), ...Array(open).fill('open')].map((status, i) => ({ status, piece: i + 1 })),
		wanted,
	);

describe('a batch', () => {
	it('is gone on with by the next piece, by the unfinished one where all others are made, by none where all are', () => {
		expect(batchOf(pieces(3, 0, 10), [], []).next).toEqual({ do: 'begin', piece: 4 });
		expect(batchOf(pieces(9, 1, 10), [], [{ id: 'x', piece: 10 }]).next).toEqual({ do: 'go-on', id: 'x', piece: 10 });
		expect(batchOf(pieces(10, 0, 10), [], []).next).toBeNull();
	});

	it('tells pulls and time a piece, and each bend', () => {
		const { pulls, seconds, bends } = batchOf(pieces(3, 0, 3), made([0.3, -0.1, 0.1]), []);
		expect([pulls, seconds]).toEqual([7 / 3, 120]);
		expect(bends).toMatchObject([{ bend: 1, drawn: 40, errors: [0.3, -0.1, 0.1], walks: null }]);
		expect(bends[0]!.mean).toBeCloseTo(0.1, 12);
	});

	it('leaves out pieces of another drawing', () => {
		const other = { ...made([1])[0]!, bends: [{ drawn: 60, error: 1, sd: 0.1 }] };
		expect(batchOf(pieces(3, 0, 3), [other, ...made([0.2, 0.1])], []).bends[0]!.errors).toEqual([0.2, 0.1]);
	});
});

describe('a bend that walks off', () => {
	const walkOf = (errors: readonly number[]) => batchOf(pieces(errors.length, 0, 20), made(errors), []).bends[0]!.walks;

	it('is told with how far, and by which published rule', () => {
		const walks = walkOf([-0.3, -0.2, -0.25, 0, 0.1, 0.2, 0.35])!;
		expect(walks.by).toBeGreaterThan(0.5);
		expect(walkWords(2, walks)).toMatch(/^Bend 2 walks off: 0\.\d° more over the last 7 pieces\./);
		expect(walkRule([walks])).toContain("Mann's trend test (Econometrica 1945)");
	});

	it('is none of five pieces, nor one that nobody could measure', () => {
		expect(walkOf([0, 0.2, 0.4, 0.6, 0.8])).toBeNull();
		expect(walkOf([0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07])).toBeNull();
	});

	it('is seen in most batches of ten that walk .15 degrees a piece with a scatter of .25, and in few that stand, looked at after every piece', () => {
		const draw = draws(33_100_000);
		const times = 300;
		const seen = (slope: number) => {
			let found = 0;
			for (let time = 0; time < times; time++) {
				const errors = Array.from({ length: 10 }, (_, i) => slope * i + draw.normal(0, 0.25));
				if (errors.some((_, n) => n > 0 && walkOf(errors.slice(0, n + 1)) !== null)) found++;
			}
			return found / times;
		};
		expect(seen(0)).toBeLessThan(0.03);
		expect(seen(0.15)).toBeGreaterThan(0.82);
	});
});

describe('a piece', () => {
	const at = (minute: number) => `2026-01-01T00:${String(minute).padStart(2, '0')}:00.000Z`;

	it('took the time at the bender, not what lay between a kill and the resume', () => {
		const events: [minute: number, event: Event][] = [
			[2, { type: 'tube-set', bend: 1 }],
			[40, { type: 'session-resumed' }],
			[43, { type: 'note-written', text: 'back' }],
		];
		const state = events.reduce(
			(now, [minute, event], i) => evolve(now, { entry: i + 1, at: at(minute), events: [event] }),
			initial(startOf(plainJob())),
		);
		expect(pieceFacts(state, Date.parse).seconds).toBe(60 * (2 + 3));
	});

	it('is of the heat told last, else of the piece before, else of the job', () => {
		const job = { ...plainJob(), tube: { ...plainJob().tube, heat: 'A' } };
		expect(heatOf(initial(startOf(job)))).toBe('A');
		expect(heatOf(initial({ ...startOf(job), heat: 'B' }))).toBe('B');
		const run = give(begin(job), { heat: 'C' });
		expect(run.outputs.at(-1)).toMatchObject({ ask: 'set' });
		expect(sessionView(run.state)).toMatchObject({ heat: 'C' });
		// It is no answer to be taken back, and no number to be read again.
		expect(give(run, { undo: true }).outputs[0]).toMatchObject({
			note: 'refused',
			reason: [{ code: 'nothing-to-undo' }],
		});
		for (const heat of ['', 'a\nb', 7, 'x'.repeat(81)]) {
			expect(give(run, { heat }).outputs[0]).toMatchObject({ note: 'refused', code: 'not-understood' });
		}
	});
});
