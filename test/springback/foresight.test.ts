import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/maths/normal.ts';
import { filterPrior, knownTubeSd, newBend, newTube } from '../../src/springback/filter.ts';
import { foresee } from '../../src/springback/foresight.ts';

const cold = newBend(newTube(filterPrior(0.021, 0.1)));
const at = (half: number, risk = 0.02) => foresee(cold, { target: 60, under: half, over: half, risk, dialStep: 0.1 });

/**
 * No way of stopping that draws a fresh normal error each time ends a bend sooner than one pull in the part of pulls that land within
 * the band, the aim being where that part is largest: its middle.
 */
const fewest = (half: number, sd: number) => 1 / (2 * normalCdf(half / sd) - 1);

describe('what a band costs', () => {
	it('is never less than a bound that no method can pass', () => {
		for (const half of [0.2, 0.25, 0.4, 0.5, 1]) {
			expect(at(half).pulls).toBeGreaterThan(fewest(half, knownTubeSd(cold)));
		}
	});

	it('is more the narrower it is, and the risk stays what was allowed as long as pulls can buy it', () => {
		const halves = [1, 0.6, 0.5, 0.4, 0.3, 0.25];
		const pulls = halves.map((half) => at(half).pulls);
		expect(pulls).toEqual(pulls.toSorted((a, b) => a - b));
		for (const half of [0.4, 0.5, 1]) expect(at(half).risk).toBeLessThanOrEqual(0.0201);
		expect(at(0.2).risk).toBeGreaterThan(0.02);
	});

	it('names the band that two pulls hold: wider for a smaller risk, no narrower than the bound has it', () => {
		const { holds } = at(0.25);
		expect(fewest(holds, knownTubeSd(cold))).toBeLessThan(2);
		expect(at(0.25, 0.005).holds).toBeGreaterThan(holds);
		expect(holds).toBe(at(1).holds);
	});
});
