import { describe, expect, it } from 'vitest';
import { type Filter, filterPrior, newBend, pull } from '../../../src/springback/filter.ts';
import { manyWrong } from '../../../src/springback/gates.ts';
import { expectReading, observe } from '../../../src/springback/reading.ts';
import { begin, give, giveAll, open } from '../../helpers/session/session-run.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';

const held = () => {
	const set = give(begin(plainJob({ tooling: { growth: 1 } })), { ready: true });
	return give(set, { loaded: open(set, 'pull').stop });
};

describe('a first measurement that was typed wrong', () => {
	const measure = held();

	it('settled as another number still has its second reading asked for', () => {
		const typed = give(measure, { angle: 95 });
		expect(open(typed, 'confirm').reading).toBe(95);
		const settled = give(typed, { reading: 85 });
		expect(open(settled, 'measure').readings).toBe(1);
		const both = give(settled, { angle: 85.2 });
		expect(both.state.bends[0]!.read).toEqual([85, 85.2]);
		expect(both.state.filter.scatter.wrong.sum).toBeGreaterThan(0.9);
	});

	it('confirmed as it was counts as two, and none is asked for', () => {
		const settled = giveAll(measure, { angle: 78 });
		const asked = settled.outputs.at(-1) as { ask: string };
		const kept = asked.ask === 'confirm' ? give(settled, { keep: true }) : give(settled, { angle: 78 });
		expect((kept.outputs.at(-1) as { ask: string }).ask).not.toBe('measure');
	});

	it('and taken back counts as no wrong number', () => {
		const back = giveAll(measure, { angle: 95 }, { undo: true });
		expect(back.state.filter).toEqual(measure.state.filter);
		const right = give(measure, { angles: [85, 85.2] });
		expect(giveAll(back, { angles: [85, 85.2] }).state.filter).toEqual(right.state.filter);
	});
});

describe('two readings each time', () => {
	/** A reading of the finder as expected, or 3 degrees off and set aside for it. */
	const read = (f: Filter, right: boolean) =>
		observe(f, 'angle', expectReading(f, 'angle').value, right ? {} : { setAside: 1 });
	const start = pull(newBend(filterPrior(0.021)), 60, 60);
	const rough = [...Array(8).keys()].reduce((f: Filter) => read(f, false), start);

	it('are asked for where many numbers were wrong, and end when the last twenty were right', () => {
		expect(manyWrong(rough)).toBe(true);
		const rightAfter = (count: number) => Array.from({ length: count }).reduce((f: Filter) => read(f, true), rough);
		// The last of the eight brought a right one with it, which stands before the twenty.
		expect(manyWrong(rightAfter(18))).toBe(true);
		expect(manyWrong(rightAfter(20))).toBe(false);
		expect(manyWrong(read(rightAfter(20), false))).toBe(true);
	});

	it('fade: what was wrong long ago counts for less', () => {
		const { sum, count } = Array.from({ length: 100 }).reduce((f: Filter) => read(f, true), rough).scatter.wrong;
		expect(sum).toBeLessThan(0.5 * rough.scatter.wrong.sum);
		expect(count).toBeLessThan(rough.scatter.wrong.count + 100);
	});
});
