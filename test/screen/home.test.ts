import { describe, expect, test } from 'vitest';
import { SESSION, SET } from '../helpers/screen/asks.ts';
import { FakeHome, FakeLive, ROWS } from '../helpers/screen/fake-ports.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';
import { runScreen } from '../helpers/screen/run-screen.ts';

const AS_DRAWN = { mirror: false, from: 'start' } as const;

async function start(rows: ConstructorParameters<typeof FakeHome>[1] = ROWS) {
	const home = new FakeHome(new FakeLive([SESSION, SET]), rows);
	const terminal = runScreen(home);
	await terminal.until('Number of your choice');
	return { terminal, home };
}

describe('the home page', () => {
	test('says of each job how it stands', async () => {
		const job = (name: string, latest?: (typeof ROWS.sessions)[number]) => ({
			path: `jobs/${name}.json`,
			name,
			summary: '2 bends',
			...(latest === undefined ? {} : { latest }),
		});
		const [open, done, scrapped] = ROWS.sessions;
		const jobs = [job('Arch', open), job('Step', done), job('Old step', scrapped), job('Cleat')];
		const { terminal } = await start({ jobs, sessions: ROWS.sessions });
		expect(terminal.text).toContain('Arch: interrupted at bend 2 (2 bends)');
		expect(terminal.text).toContain('Step: finished 2031-03-01');
		expect(terminal.text).toContain('Old step: scrapped 2031-03-01');
		expect(terminal.text).toContain('Cleat: never bent');
	});

	test('goes on with the interrupted session by one key', async () => {
		const { terminal, home } = await start();
		expect(terminal.text).toMatch(/1 \+ go on with Aft arch: 1 of 4/);
		terminal.type('+');
		await terminal.until('New session');
		expect(home.opened).toEqual([{ target: 'aft-arch-1', resume: true }]);
	});

	test('a session is gone on with only after one has read that a newer log is damaged', async () => {
		const torn = { ...ROWS.sessions[0]!, id: 'aft-arch-2', status: 'damaged', job: '', path: undefined } as const;
		const { terminal, home } = await start({ ...ROWS, sessions: [torn, ...ROWS.sessions] });
		terminal.type('+');
		const offer = await terminal.until('begin another tube');
		expect(offer.replace(/\s+/g, ' ')).toContain(
			'The newest log, aft-arch-2, is damaged, so this is an older session.',
		);
		expect(home.opened).toEqual([]);
		terminal.type('+');
		await terminal.until('New session');
		expect(home.opened).toEqual([{ target: 'aft-arch-1', resume: true }]);
	});

	test('a damaged log of another job is in the way of none', async () => {
		const torn = { ...ROWS.sessions[1]!, id: 'step-2', status: 'damaged' } as const;
		const { terminal, home } = await start({ ...ROWS, sessions: [torn, ...ROWS.sessions] });
		terminal.type('+');
		await terminal.until('New session');
		expect(home.opened).toEqual([{ target: 'aft-arch-1', resume: true }]);
	});

	test('is searched by letters as they are typed; digits still pick', async () => {
		const { terminal, home } = await start();
		terminal.type('boar');
		await terminal.until(/Search: boar +3 found/);
		expect(terminal.text).not.toContain('Aft arch');
		terminal.type('d st\x7f\x7f\x7f\x7f');
		await terminal.until(/Search: boar +3 found/);
		terminal.type('ding step: nev');
		await terminal.until(/1 found/);
		terminal.type('\n');
		await terminal.until('copy it to a new job');
		terminal.type('+');
		await terminal.until('New session');
		expect(home.opened).toEqual([{ target: 'jobs/step.json', resume: false, as: AS_DRAWN }]);
	});

	test('where nothing is found neither a number nor + picks what is not shown', async () => {
		const { terminal, home } = await start();
		terminal.type('zzz11\n');
		await terminal.until('Nothing here has that in its name');
		expect(terminal.text).not.toContain('go on');
		terminal.type('+');
		terminal.type('\x1b\x1b');
		await terminal.until('Besides');
		expect(home.opened).toEqual([]);
	});

	test('shows all again on / and on Esc', async () => {
		const { terminal } = await start();
		terminal.type('zzz');
		await terminal.until(/Search: zzz +0 found/);
		terminal.type('\n');
		await terminal.until('Nothing here has that in its name. Press Esc for the whole list.');
		terminal.type('/');
		await terminal.until('Besides');
		terminal.type('step');
		await terminal.until('Search: step');
		terminal.type('\x1b');
		await terminal.until('Besides');
	});

	test.each([
		['1', AS_DRAWN],
		['2', { mirror: true, from: 'start' }],
		['3', { mirror: false, from: 'far' }],
		['4', { mirror: true, from: 'far' }],
	])('bends a job as drawn, as the opposite part, from its other end: %s', async (key, as) => {
		const { terminal, home } = await start();
		terminal.type(`3\n`);
		await terminal.until('copy it to a new job');
		terminal.type(`${key}\n`);
		await terminal.until('New session');
		expect(home.opened).toEqual([{ target: 'jobs/step.json', resume: false, as }]);
	});

	test('prints the shop sheet of a job and says where it lies, or why not', async () => {
		const { terminal, home } = await start();
		terminal.type('3\n');
		await terminal.until('print its shop sheet');
		terminal.type('p');
		await terminal.until('Written, to be printed: jobs/step-sheet.pdf');
		home.sheetFault = Object.assign(new Error('jobs/step-sheet.pdf was not written: the disk is full.'), {
			exitCode: 5,
		});
		terminal.type('p');
		await terminal.until('the disk is full');
		await terminal.until('print its shop sheet');
	});

	test('tells a session that was not bent as drawn', async () => {
		const [open, done, scrapped] = ROWS.sessions;
		const sessions = [
			{ ...open!, bentAs: { mirror: true, from: 'far' } as const },
			{ ...done!, bentAs: { mirror: true, from: 'start' } as const },
			{ ...scrapped!, bentAs: { mirror: false, from: 'far' } as const },
		];
		const { terminal } = await start({ ...ROWS, sessions });
		expect(terminal.text).toContain('go on with Aft arch (opposite part, from the far end): 1 of 4');
		expect(terminal.text).toContain('Boarding step (opposite part): finished');
		expect(terminal.text).toContain('Boarding step (from the far end): scrapped');
		terminal.type('2\n');
		await terminal.until('go on where it was left (opposite part, from the far end)');
	});

	test.each(['text', 'job'])('sends one with a fault at %s to a text editor', async (at) => {
		const faults = [
			{
				at,
				found: { code: 'text', text: '}', line: 3, column: 7 },
				right: { code: 'json', wants: 'end', comment: false },
			},
		] as const;
		const { terminal } = await start({ jobs: [{ path: 'jobs/cut.json', name: 'cut.json', summary: '', faults }] });
		terminal.type('1\n');
		await terminal.until('Mend it in a text editor, then look at it again.');
		expect(terminal.text).toContain('1   look at the file again');
		terminal.type('+');
		await terminal.until('Write the number of a choice');
	});

	test.each([
		['3\n', 'Its drawing'],
		['4\n', 'It cannot be bent yet'],
	])('has help on the pages under it, which leads back there: %j', async (keys, page) => {
		const { terminal } = await start();
		terminal.type(keys);
		await terminal.until(page);
		expect(terminal.text).toContain('h  help');
		terminal.type('?');
		await terminal.until('where letters search');
		terminal.type('/');
		await terminal.until(page);
	});

	test('shows the last logs, and the chosen one', async () => {
		const { terminal } = await start({ ...ROWS, review: ['a line of the log'], story: keptSession() });
		expect(terminal.text).toContain('Lately');
		terminal.type('boarding step: finished\n');
		await terminal.until('all of it as one text');
		terminal.type('10\n');
		await terminal.until('a line of the log');
		terminal.type('/');
		await terminal.until('all of it as one text');
		terminal.type('/');
		await terminal.until('Lately');
	});

	test('has help, and a page of its own for every key that it names', async () => {
		const { terminal } = await start();
		terminal.type('help\n');
		await terminal.until('where letters search');
		terminal.type('1\r');
		await terminal.until('Help: keys');
		await terminal.until('take the last answer back');
		terminal.type('/');
		await terminal.until(/^Help$/m);
		terminal.type('/');
		await terminal.until('Besides');
		terminal.type('*');
		await terminal.until(/^More$/m);
		terminal.type('1\r');
		await terminal.until('What the part is called');
	});

	test('with no job says how to get one', async () => {
		const { terminal } = await start({});
		expect(terminal.text).toContain('There is no job file here: write one on the screen (below)');
	});

	test('in a folder without jobs says what to do; a sample is bent and copied, never changed', async () => {
		const sample = { path: 'samples/step.json', name: 'Step', summary: '2 bends', sample: true } as const;
		const { terminal } = await start({ jobs: [sample] });
		expect(terminal.text).toContain('This folder has no jobs yet. Try a sample, or write a job of your own (below)');
		expect(terminal.text).toMatch(/^Samples\n +1 +Step: never bent/m);
		terminal.type('1\n');
		await terminal.until('copy it to a new job');
		expect(terminal.text).not.toContain('change the job');
	});
});
