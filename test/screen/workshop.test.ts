import { describe, expect, test } from 'vitest';
import type { KeptBender } from '../../src/settings/settings.ts';
import { FakeHome, ROWS, refusal } from '../helpers/screen/fake-ports.ts';
import { runScreen } from '../helpers/screen/run-screen.ts';

const QUAY: KeptBender = {
	name: 'quay',
	machine: { units: 'in', fields: { maxAngle: 120 } },
	dies: [{ name: 'five', units: 'in', fields: { clr: 5, clamp: 3 } }],
};

async function start(kept: readonly KeptBender[]) {
	const home = new FakeHome(null, ROWS);
	home.workshop.kept = kept;
	const terminal = runScreen(home);
	await terminal.until('Jobs');
	terminal.type('test piece\n');
	await terminal.until('Benders and dies');
	return { terminal, workshop: home.workshop };
}

describe('benders and dies', () => {
	test('a bender is set up with its first die', async () => {
		const { terminal, workshop } = await start([]);
		await terminal.until('set up a bender');
		terminal.type('1\nquay\nfive\n1\n5\n');
		await terminal.until('Die five is set up.');
		expect(workshop.changes).toEqual([{ bender: 'quay', die: 'five', changes: { units: 'in', fields: { clr: 5 } } }]);
	});

	test('a name that is taken is refused', async () => {
		const { terminal } = await start([QUAY]);
		await terminal.until('set up another bender');
		terminal.type('2\nquay\n');
		await terminal.until('quay is set up already');
	});

	test('a value is set, refused, changed and forgotten', async () => {
		const { terminal, workshop } = await start([QUAY]);
		terminal.type('1\n1\n');
		await terminal.until('Kept of the die');
		terminal.type('6\n-1\n');
		await terminal.until('a length from 0 to 393');
		terminal.type('1 1/2\n');
		await terminal.until('straight tube needed behind the last bend: 1.5 in');
		terminal.type('5\n+');
		await terminal.until('that the clamp needs: not set');
		expect(workshop.changes.map(({ changes }) => changes?.fields)).toEqual([{ follow: 1.5 }, { clamp: null }]);
	});

	test('what holds with every die is kept with the bender', async () => {
		const { terminal, workshop } = await start([QUAY]);
		terminal.type('1\n');
		await terminal.until('largest dial angle: 120°');
		terminal.type('4\n0,25\n');
		await terminal.until('smallest division of the dial: 0.25°');
		expect(workshop.changes).toEqual([
			{ bender: 'quay', die: null, changes: { units: 'in', fields: { dialStep: 0.25 } } },
		]);
	});

	test('a die, and then the bender, is forgotten only when that is said', async () => {
		const { terminal, workshop } = await start([QUAY]);
		terminal.type('1\n1\n10\n');
		await terminal.until('Forget it?');
		terminal.type('/');
		await terminal.until('Kept of the die');
		expect(workshop.changes).toEqual([]);
		terminal.type('10\n+');
		await terminal.until('Forgotten: die five of bender quay.');
		terminal.type('6\n+');
		await terminal.until('Forgotten: bender quay');
		expect(workshop.kept).toEqual([]);
	});

	test('what the disk refuses is said and the page stays', async () => {
		const { terminal, workshop } = await start([QUAY]);
		workshop.fault = refusal('The settings were cut short: the disk may be full.', 5);
		terminal.type('1\n1\n5\n4\n');
		await terminal.until('the disk may be full');
		workshop.fault = null;
		terminal.type('4\n');
		await terminal.until('that the clamp needs: 4 in');
	});
});

/**
 * A piece without error: radius 5.1 in a 5 in die, 100 degrees, the bend begins .1 in past the mark at 12 in, the arc stretches by 1 %.
 * Legs outside: straight + 5.1 t + .75 t with t = tan 50 degrees = 1.191754.
 */
const PIECE = {
	od: '1.5',
	before: String(12.1 + 14 + (5.1 * ((100 * Math.PI) / 180)) / 1.01),
	mark: '12',
	angle: '100',
	startLeg: String(12.1 + 5.85 * 1.191753592594),
	farLeg: String(14 + 5.85 * 1.191753592594),
	straight: '12.1',
};

describe('a test piece', () => {
	test('is read one question at a time and tells of a 90', async () => {
		const { terminal, workshop } = await start([QUAY]);
		terminal.type('1\n1\n9\n');
		await terminal.until('Test piece, 1 of 7');
		const { straight, ...others } = PIECE;
		terminal.type(
			Object.values(others)
				.map((value) => `${value}\n`)
				.join(''),
		);
		await terminal.until('Test piece, 7 of 7');
		terminal.type(`${straight}\n`);
		await terminal.until('What the test piece tells');
		expect(terminal.text).toContain('radius of the bend     5.1 in, give or take');
		expect(terminal.text).toContain('begins                 0.1 in, give or take');
		expect(terminal.text).toContain('stretch of the arc     1 %, give or take');
		// Mark: 5 - 5.1 - .1 = -.2; tube: 5.1 (pi / 2) / 1.01 - 5 (pi / 2) - .2 = -.122.
		expect(terminal.text.replace(/\s+/g, ' ')).toMatch(
			/the mark goes 0.2 in, give or take [\d.]+ in, toward the start end/,
		);
		expect(terminal.text.replace(/\s+/g, ' ')).toMatch(/takes less tube by 0.12 in, give or take [\d.]+ in\./);
		terminal.type('+');
		await terminal.until('Kept with die five');
		const { fields } = workshop.changes[0]!.changes!;
		expect(fields.growth).toBeCloseTo(1.02, 6);
		expect(fields.markOffset).toBeCloseTo(0.1, 6);
		expect(fields.stretch).toBeCloseTo(0.01, 6);
	});

	test('without the place where the bend begins leaves the stretch as kept', async () => {
		const { terminal, workshop } = await start([
			{ ...QUAY, dies: [{ ...QUAY.dies[0]!, fields: { clr: 5, stretch: 0.01 } }] },
		]);
		terminal.type('1\n1\n9\n');
		await terminal.until('Test piece, 1 of 7');
		const { straight: _, ...others } = PIECE;
		terminal.type(
			`${Object.values(others)
				.map((value) => `${value}\n`)
				.join('')}+`,
		);
		await terminal.until('taken as 1 %');
		terminal.type('+');
		await terminal.until('Kept with die five');
		expect(Object.keys(workshop.changes[0]!.changes!.fields)).toEqual(['growth', 'markOffset']);
	});

	test('with readings that cannot all be right says so and goes back to be read again', async () => {
		const { terminal } = await start([QUAY]);
		terminal.type('1\n1\n9\n1.5\n40\n41\n');
		await terminal.until('less than the length of the piece, 40');
		terminal.type('12\n0\n');
		await terminal.until('an angle above 0 and below 180');
		terminal.type('90\n17.5\n17.5\n+');
		await terminal.until('cannot all be right');
		terminal.type('/');
		await terminal.until('Test piece, 7 of 7');
		terminal.type('/');
		await terminal.until('Test piece, 6 of 7');
	});
});
