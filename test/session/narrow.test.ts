import { describe, expect, it } from 'vitest';
import { cautionWords } from '../../src/words/caution.ts';
import { begin, give, open } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';

const usual = hatJob();
const narrow = { ...usual, tolerance: { ...usual.tolerance, under: 0.25, over: 0.25 } };
const cautions = (job: typeof usual) =>
	open(begin(job), 'set')
		.cautions.map((fact) => cautionWords(fact, job))
		.join(' ');

describe('a band that costs pulls', () => {
	it('is told of before the first pull, with what it costs and the band that two pulls hold', () => {
		expect(cautions(narrow)).toMatch(/±0\.25° is a narrow band .* up to \d+ pulls .* about ±0\.\d+/);
		expect(cautions(usual)).not.toContain('narrow');
	});

	it('is measured twice each time, and says why', () => {
		const measured = (job: typeof usual) => {
			const pulled = give(give(begin(job), { ready: true }), { loaded: 18, released: 16 });
			const { target } = open(give(begin(job), { ready: true }), 'pull');
			const again = give(give(give(pulled, { angles: [target - 2, target - 2] }), { do: 'pull' }), { ready: true });
			const { stop } = open(again, 'pull');
			return open(give(again, { loaded: stop, released: stop - 2 }), 'measure');
		};
		expect(measured(narrow)).toMatchObject({ readings: 2, reason: [{ code: 'narrow-band' }] });
		expect(measured(usual).readings).toBe(1);
	});
});
