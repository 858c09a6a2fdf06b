import { describe, expect, test } from 'vitest';
import type { KeptBender } from '../../src/settings/settings.ts';
import { FakeHome, ROWS } from '../helpers/screen/fake-ports.ts';
import { frameText } from '../helpers/screen/page-frame.ts';
import { keptText } from '../helpers/screen/screen-fixtures.ts';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 60, rows: 20 },
	{ columns: 100, rows: 30 },
	{ columns: 160, rows: 50 },
];

const QUAY: KeptBender = {
	name: 'quay',
	machine: { units: 'in', fields: { maxAngle: 120 } },
	dies: [{ name: 'five', units: 'in', fields: { clr: 5, clamp: 3 } }],
};

const line = (...answers: string[]) => answers.map((answer) => (answer === '+' ? '+' : `${answer}\r`)).join('');

/** From the home page through what a job form asks of the tube. */
const TUBE = `*1\r${line('Gate hoop', '1', '2', '1 1/2', '.095', '+', '', '', '4 1/2', '3', '+')}`;
/** A bend, then an offset by rise and run, as far as the run. */
const OFFSET = line('1', '+', '12 1/2', '30', '2', '20', '6');
const REST = line('8', '2', '5', '14 3/8', '1/2', '+');
/** Up, across and down: a hoop on its feet. */
const POINTS = line('2', '1', '0', '0', '0', '30 1/2', '20', '30 1/2', '20', '0');
/** A test piece without error, as workshop.test.ts reckons it. */
const PIECE = line('1.5', String(12.1 + 14 + (5.1 * ((100 * Math.PI) / 180)) / 1.01), '12', '100');
const LEGS = [12.1, 14].map((straight) => `${straight + 5.85 * 1.191753592594}\r`).join('');

/** Each page outside of a session, the keys that lead to it from the home page, and what stands on it. */
const PAGES: [name: string, keys: string, shows: string][] = [
	['home', '', 'Jobs'],
	['home-more', '*', 'More'],
	['home-help', 'help\r', 'where letters search'],
	['home-job', 'aft arch: never\r', 'go on where it was left'],
	['home-faults', 'torn\r', 'It cannot be bent yet'],
	['form-shape', TUBE, 'How the shape is given'],
	['form-run', `${TUBE}${OFFSET}8`, 'Run: within'],
	['form-overview', TUBE + OFFSET + REST, '+  save'],
	['form-bends', `${TUBE}${OFFSET}${REST}3\r`, 'last straight: '],
	['form-points', TUBE + POINTS, 'A further point, 5'],
	['benders', 'test piece\r', 'Benders and dies'],
	['bender', 'test piece\r1\r', 'largest dial angle'],
	['die', 'test piece\r1\r1\r', 'Kept of the die'],
	['piece-begins', `test piece\r1\r1\r9\r${PIECE}${LEGS}`, 'Test piece, 7 of 7'],
	['piece-told', `test piece\r1\r1\r9\r${PIECE}${LEGS}12.1\r`, 'What the test piece tells'],
];

describe.each(SIZES)('at $columns by $rows', (size) => {
	test.each(PAGES)('the page %s', async (name, keys, shows) => {
		const home = new FakeHome(null, ROWS);
		if (keys.startsWith('test piece')) home.workshop.kept = [QUAY];
		const shown = await frameText(home, size, { keys });
		expect(shown).toContain(shows);
		expect(shown).toBe(keptText(shown, name, size));
	});
});
