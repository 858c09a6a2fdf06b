import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pieceToldWords } from '../../src/words/test-piece.ts';

it('tells no length of a test piece more finely than how far off it may be', () => {
	const figure = fc.record({
		value: fc.double({ min: -3, max: 3, noNaN: true }),
		sd: fc.double({ min: 1e-6, max: 1, noNaN: true }),
	});
	const growth = fc.record({
		value: fc.double({ min: 0.9, max: 1.3, noNaN: true }),
		sd: fc.double({ min: 1e-6, max: 0.1, noNaN: true }),
	});
	const told = fc.record({
		growth,
		markOffset: figure,
		stretch: figure,
		on90: fc.record({ mark: figure, tube: figure }),
	});
	fc.assert(
		fc.property(told, fc.constantFrom('in' as const, 'mm' as const), (result, units) => {
			const { figures, on90 } = pieceToldWords(result, { clr: 5, stretch: 0, units });
			const lengths = [...figures, on90].flatMap((line) => [...line.matchAll(/\d+(?:\.(\d+))? (?:in|mm)\b/g)]);
			expect(lengths.length).toBeGreaterThanOrEqual(8);
			for (const [, decimals = ''] of lengths) expect(decimals.length).toBeLessThanOrEqual(units === 'in' ? 2 : 1);
		}),
	);
});
