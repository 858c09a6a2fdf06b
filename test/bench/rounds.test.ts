import { describe, expect, it } from 'vitest';
import { interleave, median, table } from './rounds.ts';

/** A measurement that gives the times of a list, one a run, and notes that it ran. */
function scripted(name: string, times: number[], limit: number | null, ran: string[] = []) {
	const run = async () => {
		ran.push(name);
		return times.shift() ?? Number.NaN;
	};
	return { name, limit, run };
}

describe('interleaved rounds', () => {
	it('take the median over the first measurement, the warm-up left out', async () => {
		const results = await interleave([scripted('base', [999, 10, 30, 20], null), scripted('x', [1, 50, 41, 40], 2)], 3);
		expect(results[0]).toMatchObject({ median: 20, least: 10, most: 30, ratio: 1, within: true });
		expect(results[1]).toMatchObject({ median: 41, ratio: 2.05, limit: 2, within: false });
		expect(table(results)[2]).toMatch(/^x +41 +40 +50 +2\.05 +2\.00 +OVER/);
	});

	it('begin each round with another measurement', async () => {
		const ran: string[] = [];
		await interleave([scripted('a', [], null, ran), scripted('b', [], null, ran)], 2);
		expect(ran.join('')).toBe('abbaab');
	});

	it('a median of an even number is the lower middle', () => {
		expect(median([4, 1, 3, 2])).toBe(2);
	});
});
