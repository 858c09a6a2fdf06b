import { describe, expect, it } from 'vitest';
import { estimateAsBuilt } from '../../src/fit/as-built.ts';
import type { AsBuiltInput, Estimate } from '../../src/fit/built-tube.ts';
import { toldOtherwise } from '../../src/fit/told-otherwise.ts';
import { angleReading, dropReading, legReading, toldBend, tooling } from '../helpers/shop/made-tube.ts';

const spread = ({ value, sd }: Estimate, by: number): Estimate => ({
	value,
	sd: by * sd,
});

/** A crown with a drop and an angle read; all that hands told of it, and both readings, off by so many times as much. */
function crown(by: number): AsBuiltInput {
	const bends = [toldBend(12, 25, 0), toldBend(30, 52, 180), toldBend(45, 25, 180)];
	const readings = [dropReading(1, { bend: 2 }, 8.34, 0.03), angleReading(1, 3, 27.4, 0.3)];
	return {
		bends: bends.map((bend) => ({
			...bend,
			mark: spread(bend.mark!, by),
			angle: spread(bend.angle, by),
			rotation: spread(bend.rotation, by),
		})),
		tooling: tooling(),
		piece: 60,
		readings: readings.map((reading) => ({ ...reading, sd: by * reading.sd })),
	};
}

describe('a tube by hands of another size', () => {
	it('is as it was where they are of the same', () => {
		const built = estimateAsBuilt(crown(1));
		const { built: again } = toldOtherwise(built, crown(1));
		for (const [k, mean] of built.mean.entries()) {
			expect(again.mean[k]).toBeCloseTo(mean, 5);
			for (const [j, value] of built.covariance[k]!.entries()) expect(again.covariance[k]![j]).toBeCloseTo(value, 9);
		}
	});

	it.each([0.6, 1.6])('is what the whole estimate finds with errors %f times as large', (by) => {
		const whole = estimateAsBuilt(crown(by));
		const { built } = toldOtherwise(estimateAsBuilt(crown(1)), crown(by));
		for (const [k, mean] of whole.mean.entries()) {
			const sd = Math.sqrt(whole.covariance[k]![k]!);
			expect(Math.abs(built.mean[k]! - mean)).toBeLessThan(0.07 * sd);
			expect(Math.abs(Math.sqrt(built.covariance[k]![k]!) / sd - 1)).toBeLessThan(0.01);
		}
	});

	it('is as likely as the normal density of what was read has it', () => {
		const of = (by: number): AsBuiltInput => ({
			bends: [toldBend(12, 30, 0, { mark: { value: 12, sd: 0.03 * by } })],
			tooling: tooling(),
			piece: 60,
			readings: [legReading(1, 12.1, 0.04 * by)],
		});
		const built = estimateAsBuilt(of(1));
		// By hand: the leg is the mark, told to .03 and read to .04, so that it is expected within .05; .1 off it is two of these.
		const density = (by: number) => -Math.log(by) - 0.5 * (2 / by) ** 2;
		const likely = (by: number) => toldOtherwise(built, of(by)).likely;
		for (const by of [0.7, 1.5, 2]) expect(likely(by) - likely(1)).toBeCloseTo(density(by) - density(1), 6);
	});

	it('keeps as much looser what was taken to be told wrong', () => {
		const legs = (by: number): AsBuiltInput => ({
			bends: [toldBend(12, 30, 0, { mark: { value: 12, sd: 0.03 * by } })],
			tooling: tooling(),
			piece: 60,
			readings: [{ ...legReading(1, 13, 0.04), confirmed: true }],
		});
		const built = estimateAsBuilt(legs(1));
		const { built: rougher } = toldOtherwise(built, legs(1.5));
		const looser = built.unknowns[0]!.told!.sd ** 2 - 0.03 ** 2;
		expect(looser).toBeGreaterThan(0.5);
		expect(rougher.unknowns[0]!.told!.sd).toBeCloseTo(Math.sqrt(0.045 ** 2 + looser), 12);
	});
});
