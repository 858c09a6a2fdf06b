import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wouldMove } from '../../../src/session/batch/held.ts';
import { countedPieces, isLaidOutAlike, type PieceRow } from '../../../src/session/batch/pieces.ts';
import { beginning, coldPrior, growthOf } from '../../../src/session/log/start.ts';
import type { Job } from '../../../src/tube/job.ts';
import { startOf } from '../../helpers/session/session-run.ts';
import { keepCorners, marks } from '../../helpers/shop/contract-geometry.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { twoDieJob } from '../../helpers/shop/two-dies.ts';

const row = (status: PieceRow['status'], piece?: number): PieceRow => ({
	status,
	...(piece !== undefined && { piece }),
});

describe('the pieces of a job', () => {
	it.each<[string, PieceRow[], number]>([
		['none yet', [], 1],
		['two finished', [row('done', 1), row('done', 2)], 3],
		['the third scrapped: its number is free again', [row('done', 1), row('done', 2), row('scrapped', 3)], 3],
		['the third left open: it keeps its number', [row('done', 1), row('done', 2), row('open', 3)], 4],
		['the first scrapped after the second was begun', [row('scrapped', 1), row('open', 2)], 1],
		['one of before there were numbers', [row('done')], 2],
		['one without a number beside one that has the first', [row('done', 1), row('open')], 3],
		['all made: one more', [row('done', 1), row('done', 2), row('done', 3)], 4],
	])('are numbered on: %s', (_, rows, next) => {
		expect(countedPieces(rows, 3).next).toBe(next);
	});

	it('made are the finished ones alone', () => {
		const rows = [row('done', 1), row('scrapped', 2), row('open', 2), row('done', 3)];
		expect(countedPieces(rows, 10)).toEqual({ wanted: 10, made: 2, begun: 1, scrapped: 1, next: 4 });
	});

	it('never share a number, in whatever order they are begun, finished, scrapped, left and gone on with', () => {
		const deed = fc.record({ do: fc.constantFrom('begin', 'finish', 'scrap', 'open again'), which: fc.nat(20) });
		fc.assert(
			fc.property(fc.array(deed, { maxLength: 40 }), (deeds) => {
				const rows: PieceRow[] = [];
				for (const { do: what, which } of deeds) {
					if (what === 'begin') rows.push(row('open', countedPieces(rows, 10).next));
					const open = rows.findIndex(({ status }) => status === 'open');
					const done = rows.filter(({ status }) => status === 'done');
					if (what === 'finish' && open >= 0) rows[open] = { ...rows[open]!, status: 'done' };
					if (what === 'scrap' && open >= 0) rows[open] = { ...rows[open]!, status: 'scrapped' };
					if (what === 'open again' && done.length > 0) {
						const at = rows.indexOf(done[which % done.length]!);
						rows[at] = { ...rows[at]!, status: 'open' };
					}
				}
				const standing = rows.filter(({ status }) => status !== 'scrapped').map(({ piece }) => piece);
				expect(new Set(standing).size).toBe(standing.length);
				const { made, begun, next } = countedPieces(rows, 10);
				expect(made + begun).toBe(standing.length);
				expect(standing).not.toContain(next);
				expect(next).toBeLessThanOrEqual(standing.length + 1);
			}),
		);
	});
});

describe('the marks of the piece before', () => {
	const job = hatJob();
	const { tooling } = job;
	const open = { ...job, tooling: { ...tooling, growth: null } };
	const { bends, last } = job.shape as Extract<Job['shape'], { kind: 'bends' }>;
	const HAT = { ...{ od: 1.5, radius: 6, stretch: 0, markOffset: 0 }, trim: job.trim, bends: [...bends], last };

	it.each([0.001, 0.2])(
		'hold whatever was learned since; %s more of the radius is told where the tape shows it',
		(off) => {
			const cold = coldPrior(open);
			const before = { value: cold.growth + off, from: 'expected' } as const;
			const held = { ...startOf(open), ...beginning({ job: open }, null, before) };
			expect(growthOf(held)).toEqual(before);
			const [one, other] = [before.value, cold.growth].map((growth) => marks(keepCorners(HAT, 6 * growth)));
			const moves = one!.rows.map(({ fromStart }, i) => Math.abs(fromStart - other!.rows[i]!.fromStart));
			const most = Math.max(...moves, Math.abs(one!.cut - other!.cut));
			if (off < 0.1) expect([most < tooling.tape, wouldMove(held)]).toEqual([true, null]);
			else expect(wouldMove(held)).toBeCloseTo(most, 9);
		},
	);

	it('hold where the radius that was expected then left no room between corners', () => {
		const before = { value: 1, from: 'expected', tooMuch: 1.4 } as const;
		expect(growthOf(beginning({ job: open }, null, before))).toEqual(before);
	});

	it('give way to a growth that is stated', () => {
		const stated = { ...job, tooling: { ...tooling, growth: 1.02 } };
		expect(beginning({ job: stated }, null, { value: 1.0201, from: 'expected' }).growth).toBe(1.02);
	});

	it('hold for each die of a tube on two, but for one whose growth is stated', () => {
		const two = twoDieJob({ tooling: { growth: null } });
		const now = growthOf(coldPrior(two));
		const [own, tight] = [now.value + 0.001, now.dies!.tight!.value - 0.001];
		const from = 'expected' as const;
		const before = { value: own, from, dies: { tight: { value: tight, from } } };
		expect(growthOf(beginning({ job: two }, null, before))).toMatchObject(before);
		const stated = twoDieJob({ tooling: { growth: null } }, { growth: 1.02 });
		const told = growthOf(beginning({ job: stated }, null, before));
		expect([told.value, told.dies!.tight!.value]).toEqual([own, 1.02]);
	});

	it('are those of the same drawing and tooling, whatever else of the job has changed', () => {
		const start = { job };
		expect(isLaidOutAlike(start, { ...job, quantity: 10, notes: 'more', tube: { ...job.tube, heat: 'B' } })).toBe(true);
		expect(isLaidOutAlike(start, { ...job, trim: { start: 2, end: 1 } })).toBe(false);
		expect(isLaidOutAlike(start, { ...job, tooling: { ...tooling, clr: tooling.clr + 1 } })).toBe(false);
	});
});
