import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { shiftNews } from '../../src/cli/shift-news.ts';
import { openSettings } from '../../src/settings/settings.ts';
import { rows } from '../helpers/session/shifted-rows.ts';

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-news-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

it('a start says in one line that a bender springs back otherwise, and of another bender nothing', () => {
	const shifted = rows(31, 4);
	expect(shiftNews(home, shifted)).toEqual([
		expect.stringMatching(
			/^Bender shop springs back 1\.\d° more at 45° than in October\. Die worn, other steel, or the pointer moved\?$/,
		),
	]);
	expect(shiftNews(home, shifted, 'shop')).toHaveLength(1);
	expect(shiftNews(home, shifted, 'yard')).toEqual([]);
	expect(shiftNews(home, rows(35, 0))).toEqual([]);
});

it('what is forgotten of a bender is nothing to compare with', async () => {
	const shifted = rows(31, 4);
	await openSettings(home).forget({ bender: 'shop', die: null, before: shifted[3]!.at });
	expect(shiftNews(home, shifted)).toEqual([]);
});

it('does not look at what older sessions taught: a start must not wait', () => {
	const old = rows(400, 4).map((row, i) =>
		i < 200
			? row
			: {
					...row,
					get lesson(): never {
						throw new Error(`${row.id} was looked at`);
					},
				},
	);
	expect(shiftNews(home, old)).toHaveLength(1);
});
