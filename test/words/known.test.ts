import { expect, it } from 'vitest';
import { knownFrom } from '../../src/session/protocol/facts/known.ts';
import type { Provenance } from '../../src/springback/history.ts';
import { knownWords } from '../../src/words/known.ts';

const near = (...kinds: [Provenance['near'][number]['shares'], number][]) =>
	kinds.map(([shares, sessions]) => ({ shares, sessions, pulls: 3 * sessions }));
const exact = (sessions: number) => ({ sessions, pulls: 3 * sessions });

it.each<[string, Provenance | undefined]>([
	["from the tube's strength alone", undefined],
	["from the tube's strength alone", { exact: exact(0), near: [] }],
	['from one tube like this', { exact: exact(1), near: [] }],
	['from 3 tubes like this and 5 tubes on other dies of this bender', { exact: exact(3), near: near(['bender', 5]) }],
	[
		'from one tube like this, 2 tubes of other sizes on this die and one tube on other dies of this bender',
		{ exact: exact(1), near: near(['bender and die', 2], ['bender', 1], ['nothing', 40]) },
	],
	[
		'from 7 tubes like this on other benders and one tube of this material on other benders',
		{ exact: exact(0), near: near(['tube', 7], ['material', 1]) },
	],
	['from 6 tubes of other kinds', { exact: exact(0), near: near(['nothing', 6]) }],
	['from 12 tubes like this', { exact: exact(12), near: near(['bender and die', 30]) }],
])('%s', (sentence, from) => {
	expect(knownWords(knownFrom(from))).toBe(sentence);
});
