import { describe, expect, it } from 'vitest';
import { decideWords } from '../../src/words/decide.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

describe('a bend that is neither over nor short', () => {
	it('is called inside its tolerance only where that is likelier than not', () => {
		expect(decideWords({ code: 'bend-inside', chance: 0.93 }, plainJob())).toBe(
			'Inside its tolerance (chance about 93 in 100).',
		);
		expect(decideWords({ code: 'bend-inside', chance: 0.26 }, plainJob())).toBe(
			'Perhaps inside its tolerance (chance about 26 in 100): measure again to know better.',
		);
	});
});

it('a bend that one more pull would bring closer never makes a tube that can no longer fit: only as it is does it not', () => {
	expect(decideWords({ code: 'nearest', fits: false, how: 'accept', bend: 1 }, plainJob())).toBe(
		'As it is, the tube does not fit.',
	);
});

describe('what is missed', () => {
	const missed = {
		endOffset: 0.0001,
		endAngle: 0.01,
		endAllowed: { place: 0.25, direction: 1 },
		corner: { bend: 2, off: 1 + 1 / 16, tolerance: 0.5 },
		checks: [],
	};

	const told = (parts: object) => decideWords({ code: 'still-missed', ...missed, ...parts }, plainJob());

	it('leaves out a far end that is off by less than anybody can see', () => {
		expect(told({})).toBe('The corner of bend 2 is 1 1/16 in off (1/2 in allowed).');
		expect(told({ corner: undefined })).toBe('The far end is where it belongs.');
		expect(told({ corner: undefined, endOffset: 0.125 })).toBe('The far end is 1/8 in from its place.');
	});

	it('says beside what is outside only what is outside as well, and what would be allowed', () => {
		expect(told({ endOffset: 0.2, endAngle: 0.9 })).toBe('The corner of bend 2 is 1 1/16 in off (1/2 in allowed).');
		expect(told({ endOffset: 0.375 })).toMatch(
			/^The far end is 3\/8 in from its place \(1\/4 in allowed\), the corner/,
		);
		expect(told({ endAngle: 1.9 })).toMatch(/^The far end is 1\.9° from its direction \(1° allowed\), the corner/);
		expect(told({ corner: undefined, endOffset: 0.125, endAngle: 1.9 })).toBe(
			'The far end is 1/8 in from its place and 1.9° from its direction (1° allowed).',
		);
	});
});

describe('what is measured again before anything rests on it', () => {
	it('is named, with what it would be done for', () => {
		const told = (parts: object) =>
			decideWords({ code: 'measure-first', bend: 3, before: 'go-back', ...parts }, plainJob());
		expect(told({})).toBe('Measure bend 3 again: never go back to a bend on one reading.');
		expect(told({ again: { kind: 'mark', bend: 3 } })).toBe(
			'Before you go back to a bend, measure the mark of bend 3: little else shows it.',
		);
		expect(told({ before: 'open', again: { kind: 'rotation', bend: 3 } })).toBe(
			'Before you open a bend, read back how bend 3 lies: little else shows it.',
		);
		expect(told({ again: { kind: 'check', name: 'crown' } })).toBe(
			'Before you go back to a bend, read the crown again: little else shows it.',
		);
	});
});
