import { describe, expect, it } from 'vitest';
import { lastCanMend } from '../../../src/session/advice/last-bend-mends.ts';
import type { CorrectedNote } from '../../../src/session/protocol/notes.ts';
import type { Check, Job } from '../../../src/tube/job.ts';
import { lastBendMendsWords } from '../../../src/words/last-bend-mends.ts';
import { bendAndSkip } from '../../helpers/session/bend-to.ts';
import { begin, give, type Run } from '../../helpers/session/session-run.ts';
import {
	angleBetween,
	dropToBend,
	dropToStraight,
	type PlainTube,
	walk,
} from '../../helpers/shop/contract-geometry.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

/** Corners may lie half an inch off and more: what the last bend can mend is not all decided before it. */
const SHAPE = 0.75;
const wideHat = (parts: Partial<Job> = {}): Job =>
	hatJob({ tolerance: { ...hatJob().tolerance, shape: SHAPE }, ...parts });

/** The hat's first bend made at this angle, the second one next. */
const afterFirst = (angle: number, job: Job = wideHat()): Run => give(bendAndSkip(begin(job), angle), { do: 'accept' });

const slope = (tolerance: number): Check => ({ name: 'slope', kind: 'angle', between: [2, 3], tolerance });
const mended = (tolerance: number, shape = 2) => {
	const job = hatJob({ checks: [slope(tolerance)], tolerance: { ...hatJob().tolerance, shape } });
	return lastCanMend(afterFirst(17, job).state)!;
};

describe('what the last bend can still mend', () => {
	it('is said while the second-last bend is next, with the correction, and at no other time', () => {
		expect(lastCanMend(begin(wideHat()).state)).toBeNull();
		const run = afterFirst(16.6);
		const note = run.outputs.find(
			(output): output is CorrectedNote => 'note' in output && output.note === 'corrected',
		)!;
		expect(note.mend).toEqual(lastCanMend(run.state));
		expect(note.mend).toMatchObject({ bend: 2, off: 0.5 });
		const second = give(bendAndSkip(run, run.state.plan.current[1]!.angle), { do: 'accept' });
		expect(lastCanMend(second.state)).toBeNull();
	});

	it.each([
		[0.7, 0.5],
		[1.45, 1.25],
		[0.1, 0],
	])(
		'is nothing of an angle that the second-last bend makes alone: within %d it may be off by %d',
		(tolerance, upTo) => {
			expect(mended(tolerance).upTo).toBe(upTo);
		},
	);

	it('is nothing of a corner that the second-last bend carries off', () => {
		// An angle of 1 degree at 20 in carries the next corner by .35 in; what brings the far leg back in line has to leave it there.
		expect(mended(1.45, SHAPE).upTo).toBe(1);
		expect(mended(1.45, 1 / 4).upTo).toBe(0.5);
	});

	it('is told in a sentence', () => {
		expect(lastBendMendsWords(mended(1.45), hatJob())).toMatch(
			/^Bend 2 may come out up to 1\.25° off: the last bend still mends that\. With it 0\.5° off, the far end would be [\d/.]+ in and [\d.]+° from the drawing\.$/,
		);
		expect(lastBendMendsWords(mended(0.1), hatJob())).toMatch(
			/^The last bend alone cannot bring the tube within its tolerances: bend 2 has to\./,
		);
	});

	/** Whether any mark and angle of the last bend bring end, direction, corners and both drops within tolerance: tried one by one. */
	function anyLastBend({ state }: Run, off: number): boolean {
		const radius = 6;
		const { job } = state.start;
		const numbers = state.plan.current;
		const angles = [state.bends[0]!.made!.angle, numbers[1]!.angle + off];
		const arcs = angles.map((angle) => (radius * angle * Math.PI) / 180);
		const drawn = tube([16, 20, 20], [17, 34, 17], 18);
		const goal = walk(drawn);
		const [crown, foot] = [dropToBend(drawn, 1, 2).distance, dropToStraight(drawn, 1, 4).distance];
		const second = numbers[1]!.fromStart - numbers[0]!.fromStart - arcs[0]!;
		// The crown needs bend 2 alone.
		const own = tube([16, second, 20], [...angles, 17], 18);
		if (Math.abs(dropToBend(own, 1, 2).distance - crown) > 1 / 16) return false;
		if (!cornersHold(own, goal.corners, 2)) return false;
		for (let mark = -64; mark <= 64; mark++) {
			const third = 20 + mark / 16;
			for (let last = 11; last <= 23; last += 0.05) {
				const made = walk(tube([16, second, third], [...angles, last], 0));
				const direction = made.directions.at(-1)!;
				if (angleBetween(direction, goal.directions.at(-1)!) > job.tolerance.direction) continue;
				const from = goal.corners.at(-1)!.map((x, i) => x - made.corners.at(-1)![i]!);
				const wanted = from.reduce((sum, x, i) => sum + x * direction[i]!, 0);
				// No longer than what is left of the piece.
				const used = 16 + second + third + arcs[0]! + arcs[1]! + (radius * last * Math.PI) / 180;
				const along = Math.min(wanted, state.piece - used);
				if (Math.hypot(...from.map((x, i) => x - along * direction[i]!)) > job.tolerance.shape) continue;
				if (!cornersHold(tube([16, second, third], [...angles, last], 18), goal.corners, 3)) continue;
				const drop = dropToStraight(tube([16, second, third], [...angles, last], 18), 1, 4).distance;
				if (Math.abs(drop - foot) <= 1 / 16) return true;
			}
		}
		return false;
	}

	/** Whether the corners of the first bends lie within the tolerance of shape of where the drawing has them. */
	function cornersHold(made: PlainTube, drawn: readonly (readonly number[])[], count: number): boolean {
		const is = walk(made).corners.slice(1, 1 + count);
		return is.every((corner, i) => Math.hypot(...corner.map((x, k) => x - drawn[1 + i]![k]!)) <= SHAPE);
	}

	const tube = (straights: number[], angles: number[], last: number): PlainTube => ({
		od: 1.5,
		radius: 6,
		stretch: 0,
		markOffset: 0,
		trim: { start: 0, end: 0 },
		bends: straights.map((straight, i) => ({ straight, angle: angles[i]!, rotation: i === 0 ? 0 : 180 })),
		last,
	});

	it.each([16.6, 17, 17.5])(
		'after a first bend of %d is what trying every last bend finds, within its fineness',
		(first) => {
			const run = afterFirst(first);
			const { upTo } = lastCanMend(run.state)!;
			expect(upTo).toBeGreaterThan(0);
			for (const off of [-upTo, upTo]) expect(anyLastBend(run, off)).toBe(true);
			const beyond = upTo + 1.5;
			expect([-beyond, beyond].every((off) => anyLastBend(run, off))).toBe(false);
		},
	);
});
