import { describe, expect, it } from 'vitest';
import type { DecideAsk } from '../../../src/session/protocol/asks.ts';
import { headline } from '../../../src/words/session/ask-decide.ts';
import { DECIDE, RELIEVE } from '../../helpers/screen/asks.ts';

const asked = (parts: Partial<DecideAsk>): DecideAsk => ({ ...DECIDE, bend: 12, ...parts });
const measured = (of: DecideAsk['of']) => asked({ advice: 'measure', of });

describe('the advice above all else', () => {
	it.each<[string, DecideAsk]>([
		['Take bend 12 as it is.', asked({ advice: 'accept' })],
		['Pull bend 12 further.', asked({ advice: 'pull' })],
		['Open bend 12 by 0.6°.', { ...RELIEVE, bend: 12 }],
		['Give the tube up.', asked({ advice: 'scrap' })],
		['Go back to bend 11.', asked({ advice: 'reopen', of: 11, how: 'pull' })],
		['Measure bend 11 again.', measured({ kind: 'angle', bend: 11 })],
		['Measure the mark of bend 11.', measured({ kind: 'mark', bend: 11 })],
		['Read back how bend 11 lies.', measured({ kind: 'rotation', bend: 11 })],
		['Read the far foot again.', measured({ kind: 'check', name: 'far foot' })],
		['Read that check again.', measured({ kind: 'check', name: 'lie of the far foot on the plank' })],
	])('is %s', (words, ask) => {
		expect(headline(ask)).toBe(words);
		expect(words.split(' ').length).toBeLessThanOrEqual(6);
	});
});
