import { describe, expect, it } from 'vitest';
import { foreign, foreignName } from '../../src/words/foreign.ts';

describe('a text from elsewhere that runs long', () => {
	it('is cut to the length that it may have, with a sign that something is missing', () => {
		const name = foreignName('n'.repeat(1_000_000));
		expect(name).toBe(`${'n'.repeat(79)}…`);
		expect(foreign('t'.repeat(1_000_000))).toHaveLength(4096);
	});

	it('is whole up to there, and written out only afterwards', () => {
		expect(foreignName('n'.repeat(80))).toBe('n'.repeat(80));
		expect(foreignName('\x1b'.repeat(90))).toBe(`${'\\u001b'.repeat(79)}…`);
	});
});
