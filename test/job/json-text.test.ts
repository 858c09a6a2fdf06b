import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scanJson } from '../../src/job/json-text.ts';
import { parseJobText } from '../../src/job/load.ts';
import { toldFaults } from '../helpers/disk/told-faults.ts';

describe('a text that is no JSON', () => {
	it.each([
		['', 'line 1, column 1', 'the end of the file', 'a value here'],
		['{ "a": 1,\n  "b": [1, 2,],\n}', 'line 2, column 14', '"],"', 'no comma goes before a ]'],
		['{ "a": 1,\n}', 'line 2, column 1', '"}"', 'no comma goes before a }'],
		['{ "a": 1\n  "b": 2 }', 'line 2, column 3', '"\\"b\\": 2 }"', 'a comma or }'],
		['{ "a" 1 }', 'line 1, column 7', '"1 }"', 'a : here, after the key "a"'],
		['{ // note\n}', 'line 1, column 3', '"// note"', 'JSON has no comments'],
		["{ 'a': 1 }", 'line 1, column 3', '"\'a\': 1 }"', 'a key in "…"'],
		['{ "a": "1\n" }', 'line 1, column 8', '"\\"1"', 'closed with " on the same line'],
		['{ "a": 1 } }', 'line 1, column 12', '"}"', 'the end of the file here'],
		['{ "a": 01 }', 'line 1, column 9', '"1 }"', 'a comma or }'],
		['{ "a": [1', 'line 1, column 10', 'the end of the file', 'a comma or ]'],
		['['.repeat(5000), 'line 1, column 102', `"${'['.repeat(20)}"`, 'not nested so deeply'],
	])('%j breaks off at %s', (text, at, found, right) => {
		const parsed = parseJobText(text);
		expect('value' in parsed).toBe(false);
		expect(toldFaults(parsed)).toEqual([{ at, found, right: expect.stringContaining(right) }]);
	});

	it('is told from JSON exactly as JSON.parse tells it', () => {
		const texts = fc
			.tuple(
				fc.json({ maxDepth: 4 }),
				fc.nat(),
				fc.constantFrom('', ',', '"', '}', ']', '0', '\\', ' ', '\n', '-', 'e'),
			)
			.map(([json, at, char]) => {
				const cut = at % (json.length + 1);
				return json.slice(0, cut) + char + json.slice(cut + (at % 2));
			});
		fc.assert(
			fc.property(texts, (text) => {
				expect(scanJson(text).whole).toBe(isJson(text));
			}),
			{ numRuns: 2000 },
		);
	});
});

function isJson(text: string): boolean {
	try {
		JSON.parse(text);
		return true;
	} catch {
		return false;
	}
}

describe('a key that stands twice', () => {
	it('is a fault beside the value, for JSON.parse would drop the first', () => {
		const parsed = parseJobText('{ "tube": { "od": 1,\n "wall": 2, "od": 3 }, "list": [{ "a": 1, "a": 2 }] }');
		expect({ ...parsed, faults: toldFaults(parsed) }).toEqual({
			value: { tube: { od: 3, wall: 2 }, list: [{ a: 2 }] },
			faults: [
				{ at: 'tube.od', found: 'the key "od" a second time, line 2, column 13', right: 'each key once' },
				{ at: 'list[0].a', found: 'the key "a" a second time, line 2, column 43', right: 'each key once' },
			],
		});
	});

	it('may stand once in each of two objects', () => {
		expect(parseJobText('[{ "a": 1 }, { "a": 1 }]').faults).toEqual([]);
	});
});

it('a byte-order mark in front is no fault', () => {
	expect(parseJobText('\uFEFF{}')).toEqual({ value: {}, faults: [] });
});
