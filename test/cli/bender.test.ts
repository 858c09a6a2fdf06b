import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { benderLines, runBender } from '../../src/cli/bender.ts';
import { FIGURE_OPTIONS } from '../../src/cli/bender-options.ts';
import { lessonsFor } from '../../src/cli/lessons-for.ts';
import { optionName } from '../../src/cli/quantity.ts';
import { UsageError } from '../../src/cli/usage-error.ts';
import { sessionFolder } from '../../src/journal/catalogue.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { openSettings } from '../../src/settings/settings.ts';
import type { Kin } from '../../src/springback/history.ts';
import { FIELD_NAMES } from '../../src/tube/tooling-fields.ts';
import { written } from '../helpers/cli/written.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { newMachine } from '../helpers/shop/plain-shop.ts';

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-bender-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** Runs the command on `home`; what it wrote, and its exit code. */
async function bender(name: string | null, options: Record<string, string | true> = {}, json = false) {
	const { io, kept } = written();
	const code = await runBender({ name, json, home, options }, io);
	return { code, ...kept };
}

const none = 'No bender is set up. To set one up: pullbook bender NAME --die DIE --clr LENGTH\n';

describe('pullbook bender', () => {
	it('says how to set one up where there is none, and makes nothing', async () => {
		expect(await bender(null)).toEqual({ code: 0, out: none, err: '' });
		expect(readdirSync(home)).toEqual([]);
	});

	it('sets up a bender and its dies by options and lists them', async () => {
		await bender('shop', { 'max-angle': '120', 'dial-step': '1/2' });
		await bender('shop', { die: 'five', clr: '5', clamp: '0\' 4 1/8"', 'mark-offset': '-1/8', growth: '1.021' });
		const text = [
			'Bender shop',
			'  with every die: max-angle 120°, dial-step 0.5°',
			'  die five: clr 5 in, growth 1.021, mark-offset -0.125 in, clamp 4.125 in',
		];
		expect((await bender(null)).out).toBe(`${text.join('\n')}\n`);
		expect(benderLines(home)).toEqual(text);
		expect(openSettings(home).tooling('shop', 'five', 'in')).toMatchObject({ clr: 5, clamp: 4.125, maxAngle: 120 });
	});

	it('prints one JSON document with --json', async () => {
		await bender('shop', { die: 'five', clr: '127 mm' });
		const { out } = await bender(null, {}, true);
		expect(JSON.parse(out)).toEqual({
			benders: [{ name: 'shop', machine: null, dies: [{ name: 'five', units: 'in', fields: { clr: 5 } }] }],
			learned: [],
			forgotten: [],
		});
	});

	it('keeps a die in mm when told so, and reads bare lengths of it in mm from then on', async () => {
		await bender('shop', { die: 'm', units: 'mm', clr: '152' });
		await bender('shop', { die: 'm', clamp: '100' });
		expect((await bender('shop')).out).toContain('die m: clr 152 mm, clamp 100 mm');
	});

	it('changes one value, forgets one with none, and only shows a die that is named alone', async () => {
		await bender('shop', { die: 'five', clr: '5', clamp: '4', floor: '30' });
		const { out } = await bender('shop', { die: 'five', clamp: '3 1/2', floor: 'none' });
		expect(out).toBe('Bender shop\n  die five: clr 5 in, clamp 3.5 in\n');
		expect((await bender('shop', { die: 'five' })).out).toBe(out);
	});

	it('removes a die, and a bender', async () => {
		await bender('shop', { die: 'five', clr: '5' });
		expect((await bender('shop', { die: 'five', remove: true })).out).toBe(
			'Die "five" of bender "shop" is forgotten.\nBender shop\n',
		);
		expect((await bender('shop', { remove: true })).out).toContain('Bender "shop" and its dies are forgotten.');
		expect((await bender(null)).out).toBe(none);
	});

	it('says on standard error what was wrong with the kept file', async () => {
		writeFileSync(join(home, 'settings.json'), '{"benders": [');
		const { code, out, err } = await bender(null);
		expect([code, out]).toEqual([0, none]);
		expect(err).toMatch(/^pullbook: .*settings\.json is broken \(it is not whole JSON\)/);
	});

	it.each([
		[null, { clr: '5' }, 'Name the bender'],
		['yard', {}, 'There is no bender "yard". Set up: "shop".'],
		['yard', { remove: true }, 'There is no bender "yard"'],
		['shop', { die: 'six', remove: true }, 'has no die "six". Its dies are "five".'],
		['shop', { die: 'five', remove: true, clr: '6' }, '--remove goes with --die alone'],
		['shop', { die: 'five', clr: 'six' }, '--clr: "six" cannot be read'],
		['shop', { die: 'five', clr: '-5' }, '--clr cannot be -5; write a length from 0.0394 to 787 in, or none.'],
		['shop', { die: 'five', growth: '102' }, 'write a number from 0.5 to 2'],
		['shop', { die: 'five', 'max-angle': '400' }, 'an angle in degrees from 1 to 360'],
		['shop', { die: 'five', units: 'cm', clr: '5' }, '--units is in or mm, but "cm"'],
		['shop', { die: ' ', clr: '5' }, '--die cannot be " "; write a name'],
		['a\nb', { clr: '5' }, 'NAME cannot be "a\\nb"'],
	])('%s %o is refused in a sentence', async (name, options, sentence) => {
		await bender('shop', { die: 'five', clr: '5' });
		const before = openSettings(home).benders();
		const refused = bender(name, options as Record<string, string | true>);
		await expect(refused).rejects.toThrow(sentence);
		await expect(refused).rejects.toBeInstanceOf(UsageError);
		expect(openSettings(home).benders()).toEqual(before);
	});

	it('every field is an option, and every option of a field is a field', () => {
		expect(Object.keys(FIGURE_OPTIONS)).toEqual(expect.arrayContaining(FIELD_NAMES.map(optionName)));
		for (const field of FIELD_NAMES) expect(FIGURE_OPTIONS[optionName(field)]?.value).toBeDefined();
	});
});

describe('what was learned', () => {
	const rail = plainJob();
	const grab = plainJob({ tooling: { die: '4 in', clr: 4 }, units: 'in' });

	it('of a bender that was never set up is shown all the same, at six angles with a band and a plot in ASCII', async () => {
		bendIn(home, { day: 1, job: rail, seed: 3 });
		bendIn(home, { day: 2, job: rail, seed: 3 });
		const { out, code } = await bender('shop');
		const lines = out.split('\n');
		expect(code).toBe(0);
		expect(lines.slice(0, 3)).toEqual(['Bender shop (not set up)', '', '  die 6 in, 1.5 x 0.095 in 1020-dom']);
		expect(lines[3]).toMatch(/^ {4}learned in 2 sessions, \d+ pulls$/);
		expect(lines[7]).toMatch(/^ {4}wrong numbers: [2-5] in 100 \(told by \d\d readings\)$/);
		const rows = lines.filter((line) => line.includes('|'));
		expect(rows.map((line) => Number(line.slice(0, 8)))).toEqual([15, 30, 45, 60, 90, 120]);
		for (const row of rows) {
			const [, middle, low, high, plot] = /(\S+) \( *(\S+) to +(\S+)\) {2}\|( *-*o-*)$/.exec(row) ?? [];
			expect(Number(low)).toBeLessThanOrEqual(Number(middle));
			expect(Number(high)).toBeGreaterThanOrEqual(Number(middle));
			expect(plot).toBeDefined();
		}
		// biome-ignore lint/suspicious/noControlCharactersInRegex: all that ASCII has
		expect(out).toMatch(/^[\x00-\x7f]*$/);
		for (const line of lines) expect(line.length).toBeLessThanOrEqual(60);
	});

	it('tells what mechanics did not know: about what the simulated machine really springs back', async () => {
		for (const day of [1, 2, 3]) bendIn(home, { day, job: rail, seed: 3 });
		const { out } = await bender('shop', {}, true);
		const [learned] = JSON.parse(out).learned;
		const machine = newMachine(3);
		const at90 = learned.springback.find(({ angle }: { angle: number }) => angle === 90);
		const truly = at90.angle + at90.back - machine.trueReach(at90.angle + at90.back);
		expect(learned).toMatchObject({ bender: 'shop', die: '6 in', material: '1020-dom', sessions: 3 });
		// Of a tube of 1 1/2 in and a die of 6 in.
		expect(learned).toMatchObject({ units: 'mm', od: 38.1, clr: 152.4 });
		expect(truly).toBeGreaterThan(at90.low);
		expect(truly).toBeLessThan(at90.high);
	});

	it('says when most of it comes from other dies, and stands with the die that is set up', async () => {
		await bender('shop', { die: '6 in', clr: '6' });
		bendIn(home, { day: 1, job: rail, seed: 3 });
		bendIn(home, { day: 2, job: grab, seed: 3 });
		const { out } = await bender('shop');
		expect(out).toContain('Bender shop\n  die 6 in: clr 6 in\n\n  die 4 in, 1.5 x 0.095 in 1020-dom\n');
		expect(out.replaceAll(/\s+/g, ' ')).toContain(
			'known from one tube like this and one tube on other dies of this bender',
		);
	});

	it('is on the home screen’s page, and nowhere for a bender of another name', async () => {
		bendIn(home, { day: 1, job: rail });
		expect(benderLines(home)).toContain('  die 6 in, 1.5 x 0.095 in 1020-dom');
		await expect(bender('yard')).rejects.toThrow('There is no bender "yard"');
	});
});

describe('--forget', () => {
	beforeEach(() => {
		bendIn(home, { day: 1, seed: 3 });
		bendIn(home, { day: 2, job: plainJob({ tooling: { die: '4 in', clr: 4 } }), seed: 3 });
	});
	const dies = async () => JSON.parse((await bender('shop', {}, true)).out).learned.map(({ die }: Kin) => die);
	const logs = () => readdirSync(sessionFolder(home));

	it('leaves out what one die taught until now and says so; the logs stay; --remember brings it back', async () => {
		const before = logs();
		const { out } = await bender('shop', { die: '6 in', forget: true });
		expect(out).toMatch(
			/^Bender shop, forgotten of die 6 in: what was learned before \S+ \S+ UTC\n {2}1 session, \d+ pulls?;/,
		);
		expect(await dies()).toEqual(['4 in']);
		expect((await bender('shop')).out).toMatch(/forgotten of die 6 in: .*\n.*1 session, \d+ pulls?; the logs are kept/);
		expect(logs()).toEqual(before);
		const again = await bender('shop', { die: '6 in', remember: true });
		expect(again.out).toContain('What was learned with die "6 in" of bender "shop" counts again.\n');
		expect(await dies()).toEqual(['4 in', '6 in']);
	});

	it('of the whole bender leaves out every die, and what is bent afterwards counts', async () => {
		await bender('shop', { forget: true });
		expect(await dies()).toEqual([]);
		const { counts } = openSettings(home);
		expect(counts('shop', '6 in', '2026-01-01T08:00:00.000Z')).toBe(false);
		expect(counts('shop', '6 in', new Date(Date.now() + 1000).toISOString())).toBe(true);
		expect(counts('yard', '6 in', '2026-01-01T08:00:00.000Z')).toBe(true);
	});

	it('is what a new session begins without', () => {
		const rows = new SessionCache(home).read().rows;
		expect(lessonsFor(home, rows)).toHaveLength(2);
		return bender('shop', { die: '4 in', forget: true }).then(() => {
			expect(lessonsFor(home, rows).map(({ kin }) => kin.die)).toEqual(['6 in']);
		});
	});

	it('twice is taken back once at a time', async () => {
		await bender('shop', { die: '6 in', forget: true });
		await bender('shop', { forget: true });
		await bender('shop', { remember: true });
		expect(await dies()).toEqual(['4 in']);
		await expect(bender('shop', { remember: true })).rejects.toThrow('Nothing that was learned with bender "shop"');
		await bender('shop', { die: '6 in', remember: true });
		expect(await dies()).toEqual(['4 in', '6 in']);
	});

	it('says how it is taken back: of a die by its name', async () => {
		const { out } = await bender('shop', { die: '6 in', forget: true, ascii: true });
		expect(out).toContain('the logs are kept, --die "6 in" --remember undoes it\n');
		await expect(bender('shop', { remember: true })).rejects.toThrow(
			'Nothing that was learned with bender "shop" as a whole is forgotten. Forgotten of its dies: "6 in"; name one with --die.',
		);
		await bender('shop', { die: '6 in', remember: true });
		const whole = await bender('shop', { forget: true });
		expect(whole.out).toContain('the logs are kept, --remember undoes it\n');
		await expect(bender('shop', { die: '6 in', remember: true })).rejects.toThrow('as a whole is: leave --die out.');
	});

	it.each([
		[{ die: '6 in', forget: true, clr: '6' }, '--forget goes with --die alone'],
		[{ remember: true, keep: true }, '--remember goes with --die alone'],
		[{ die: '9 in', remember: true }, 'Nothing that was learned with die "9 in" of bender "shop" is forgotten.'],
	])('%o is refused in a sentence', async (options, sentence) => {
		await expect(bender('shop', options as Record<string, string | true>)).rejects.toThrow(sentence);
	});
});

describe('a test piece', () => {
	// By hand: 1.5 in tube, die radius 5, finished radius 5.1; bent 120 from 0.1 in past the mark at 12, far straight 10.
	// tan 60 = 1.7320508: legs 12.1 + 5.85 x 1.7320508 and 10 + 5.85 x 1.7320508; before = 22.1 + 5.1 x 2.0943951.
	const leg = 5.85 * Math.sqrt(3);
	const readings = {
		die: 'five',
		'test-angle': '120',
		'test-od': '1.5',
		'test-before': String(22.1 + (5.1 * 2 * Math.PI) / 3),
		'test-mark': '12',
		'test-start-leg': String(12.1 + leg),
		'test-far-leg': String(10 + leg),
	};
	beforeEach(() => bender('shop', { die: 'five', clr: '5' }));

	it('tells growth and mark offset with their scatter, and keeps nothing unasked', async () => {
		const { out } = await bender('shop', readings);
		expect(out).toMatch(/growth {7}1\.02, give or take 0\.01\d/);
		expect(out).toMatch(/mark-offset {2}0\.1, give or take 0\.\d+ in/);
		expect(out).toContain('stretch      taken as 0; --test-straight tells it');
		expect(out).toContain('Nothing is kept yet; --keep keeps it.');
		expect(openSettings(home).tooling('shop', 'five', 'in')).toEqual({ clr: 5 });
	});

	it('is kept with the die by --keep', async () => {
		const { out } = await bender('shop', { ...readings, 'test-straight': '12.1', keep: true });
		expect(out).toMatch(/stretch {6}-?0(\.0000)?, give or take 0\.0\d+/);
		expect(openSettings(home).tooling('shop', 'five', 'in')).toEqual({
			clr: 5,
			growth: expect.closeTo(1.02, 9),
			markOffset: expect.closeTo(0.1, 9),
			stretch: expect.closeTo(0, 9),
		});
	});

	it('is one JSON document with --json', async () => {
		const { out } = await bender('shop', readings, true);
		const { testPiece } = JSON.parse(out);
		expect(testPiece.growth.value).toBeCloseTo(1.02, 9);
		expect(testPiece.stretch).toBeNull();
	});

	it.each([
		[{ die: 'five', 'test-angle': '120' }, 'The test piece lacks --test-od, --test-before, --test-mark'],
		[{ ...readings, die: 'new' }, 'needs the radius of the die'],
		[{ ...readings, 'test-angle': '190' }, '--test-angle cannot be 190; write an angle above 0 and below 180'],
		[{ ...readings, 'test-before': '12' }, 'cannot all be right'],
		[{ keep: true, 'test-angle': '90' }, 'name it with --die DIE'],
	])('%o is refused in a sentence', async (options, sentence) => {
		await expect(bender('shop', options as Record<string, string | true>)).rejects.toThrow(sentence);
		expect(openSettings(home).tooling('shop', 'five', 'in')).toEqual({ clr: 5 });
	});
});
