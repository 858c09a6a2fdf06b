import { linearRegression, mean } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { bendFigures, landedPlot, meanPulls, scatterPlot, springbackPlot } from '../../src/review/plots.ts';
import { begin, give, open, type Run } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

/** The springback at an angle on the straight line through the two places of the band next to it, or beyond its end. */
function linearly(band: readonly { angle: number; back: number }[], angle: number): number {
	const at = Math.max(
		1,
		band.findIndex((place) => place.angle >= angle),
	);
	const [a, b] = [band[at - 1]!, band[at]!];
	return a.back + ((angle - a.angle) / (b.angle - a.angle)) * (b.back - a.back);
}

/** The hat's first bend with these readings, each answer's state beside the one before. */
function states(...answers: unknown[]) {
	let run: Run = begin(hatJob());
	const all = [run.state];
	for (const answer of answers) {
		run = give(run, answer);
		all.push(run.state);
	}
	return { all, run, last: run.state };
}

describe('springback against angle', () => {
	const { last } = states({ ready: true }, { loaded: 18.5 }, { angles: [13, 13.2] });
	const { dies, pulls } = springbackPlot(last);
	const { band } = dies[0]!;

	test('has each measured pull where the dial and the mean of its readings put it', () => {
		const landed = mean([13, 13.2]);
		expect(pulls).toHaveLength(1);
		expect(pulls[0]!.bend).toBe(1);
		expect(pulls[0]!.angle).toBeCloseTo(landed, 9);
		expect(pulls[0]!.back).toBeCloseTo(18.5 - landed, 9);
	});

	test('has a band round the line, over all angles of the tube', () => {
		for (const { low, back, high } of band) expect(low < back && back < high).toBe(true);
		const angles = [...band.map(({ angle }) => angle)];
		expect(Math.min(...angles)).toBeLessThan(13.1);
		expect(Math.max(...angles)).toBeGreaterThan(34);
	});

	test('before any tube is the straight line of mechanics: what take-up and proportion alone lead to', () => {
		// The prior's curvature is 0, so that springback over the angle is a straight line but for where the onset bends it.
		const far = band.filter(({ angle }) => angle > 15).map(({ angle, back }): [number, number] => [angle, back]);
		const { m, b } = linearRegression(far);
		for (const [angle, back] of far) expect(Math.abs(m * angle + b - back)).toBeLessThan(0.05);
	});
});

describe('springback of a tube of two dies', () => {
	const run = give(begin(twoDieJob()), { ready: true });
	const { dies } = springbackPlot(run.state);

	test('has a band for each die, over the angles of its own bends', () => {
		expect(dies.map(({ die, bends }) => [die, bends])).toEqual([
			['tight', [1, 4]],
			['wide', [2, 3]],
		]);
		for (const { bends, band } of dies) {
			const angles = bends.map((bend) => run.state.design.shape.bends[bend - 1]!.angle);
			expect(band[0]!.angle).toBeLessThan(Math.min(...angles));
			expect(band.at(-1)!.angle).toBeGreaterThan(Math.max(...angles));
		}
	});

	test("is on each die what its first pull's ask expects", () => {
		const { stop, expect: told } = open(run, 'pull');
		const backs = dies.map(({ band }) => linearly(band, told.angle));
		expect(backs[0]).toBeCloseTo(stop - told.angle, 1);
		// The wide die springs back more: the other band would be the wrong one.
		expect(Math.abs(backs[1]! - (stop - told.angle))).toBeGreaterThan(0.3);
	});
});

describe('where stops landed', () => {
	test('is what the finder showed less what the ask had said', () => {
		const set = states({ ready: true });
		const { stop, expect: told } = open(set.run, 'pull');
		const { all } = states({ ready: true }, { loaded: stop }, { angles: [told.angle - 0.4, told.angle - 0.2] });
		const [point] = landedPlot(all);
		expect(point!.off).toBeCloseTo(-0.3, 2);
		// Nine in ten of a normal distribution lie within 1.6449 of its deviations (any table of it).
		expect(point!.high).toBeCloseTo(1.6449 * told.sd, 2);
		expect(point!.low).toBeCloseTo(-1.6449 * told.sd, 2);
	});

	test('leaves out pulls that nobody measured', () => {
		const { all } = states({ ready: true }, { loaded: 18.5 }, { skip: true });
		expect(landedPlot(all)).toEqual([]);
	});
});

describe('scatter by kind', () => {
	test('begins with what is common in any shop, and moves with the readings', () => {
		const cold = scatterPlot(states({ ready: true }).last);
		// Common practice, as springback/scatter.ts has it.
		expect(cold.map(({ kind, common }) => [kind, common])).toEqual([
			['stop', 0.25],
			['seat', 0.25],
			['dial', 0.2],
			['finder', 0.25],
		]);
		for (const { common, before, now } of cold) {
			expect(before).toBeCloseTo(common, 12);
			expect(now).toBeCloseTo(common, 12);
		}
		const { stop } = open(states({ ready: true }).run, 'pull');
		const stopping = (loaded: number) => scatterPlot(states({ ready: true }, { loaded }).last)[0]!.now;
		// A hand that lands where it was told scatters less than one that lands half a degree beyond it.
		expect(stopping(stop)).toBeLessThan(0.25);
		expect(stopping(stop + 0.5)).toBeGreaterThan(stopping(stop));
	});
});

describe('bends over sessions', () => {
	test('have their error and their pulls', () => {
		const { last } = states({ ready: true }, { loaded: 18.5 }, { angles: [15, 15] }, { do: 'accept' });
		const [first, second] = bendFigures(last);
		expect(first).toEqual({ error: last.bends[0]!.made!.angle - 17, pulls: 1 });
		expect(second).toEqual({ error: null, pulls: 0 });
	});

	test('have the mean of the bends that were pulled', () => {
		const bend = (pulls: number) => ({ error: null, pulls });
		expect(meanPulls([[bend(3), bend(1), bend(0)], [bend(0)], []])).toEqual([mean([3, 1]), null, null]);
	});
});
