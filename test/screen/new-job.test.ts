import { describe, expect, test } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { answeredForm, formOf } from '../../src/screen/job-form/job-form.ts';
import type { Size } from '../../src/terminal/output.ts';
import { FakeHome, ROWS, refusal } from '../helpers/screen/fake-ports.ts';
import { runScreen } from '../helpers/screen/run-screen.ts';

function start(home = new FakeHome(null, ROWS), size?: Size) {
	return { terminal: runScreen(home, size), home };
}

/** Enter of a numeric pad. */
const ENTER = '\n';
const line = (...answers: string[]) => answers.map((answer) => (answer === '+' ? '+' : `${answer}${ENTER}`)).join('');

const TUBE = line('Gate hoop', '1', '2', '1 1/2', '.095', '+', '', '', '4 1/2', '3', '+');
/** A bend, then an offset by rise and run the opposite way, then the last straight; trims. */
const SHAPE = line('1', '+', '12 1/2', '30', '2', '20', '6', '8', '2', '5', '14 3/8', '1/2', '+');

const SAVED = {
	pullbook: 'job/1',
	name: 'Gate hoop',
	units: 'in',
	tube: { material: '1020-dom', od: '1 1/2', wall: 0.095 },
	tooling: { clr: '4 1/2', clamp: 3 },
	shape: {
		bends: [
			{ straight: '12 1/2', angle: 30, rotation: 0 },
			{ straight: 20, angle: 36.869898, rotation: 180 },
			{ straight: 7, angle: 36.869898, rotation: 180 },
		],
		last: '14 3/8',
	},
	trim: { start: '1/2' },
};

/** The file as saved, read as the program reads it. */
function saved(home: FakeHome, path = 'yard/gate-hoop.json'): unknown {
	const text = home.workshop.files.get(path);
	if (text === undefined) throw new Error(`Nothing was saved as ${path}: ${[...home.workshop.files.keys()]}`);
	expect(readJob(JSON.parse(text))).not.toHaveProperty('faults');
	return JSON.parse(text);
}

describe('a new job on the screen', () => {
	test('is written by one question after the other and saved', async () => {
		const { terminal, home } = start();
		await terminal.until('Jobs');
		terminal.type('*1\r');
		await terminal.until('What the part is called');
		terminal.type(TUBE);
		await terminal.until('How the shape is given');
		terminal.type(SHAPE);
		await terminal.until('+  save');
		terminal.type('+');
		await terminal.until('Saved: yard/gate-hoop.json');
		expect(saved(home)).toEqual(SAVED);
	});

	test('loses no key of all that comes in one chunk, from the home page on', async () => {
		const { terminal, home } = start();
		await terminal.until('Jobs');
		terminal.type(`*1\r${TUBE}${SHAPE}+`);
		await terminal.until('Saved: yard/gate-hoop.json');
		expect(saved(home)).toEqual(SAVED);
	});

	test('by its points stands on the screen as it is drawn', async () => {
		const { terminal, home } = start();
		await terminal.until('Jobs');
		// Up, across and down: a hoop on its feet.
		terminal.type(`*1\r${TUBE}${line('2', '1', '0', '0', '0', '30 1/2', '20', '30 1/2', '20', '0')}`);
		await terminal.until('A further point, 5');
		expect(terminal.text).toContain('1 (0, 0) 2 (0, 30 1/2) 3 (20, 30 1/2) 4 (20, 0)');
		expect(terminal.text).toContain('21 1/2 in by 31 1/4 in over all');
		terminal.type('+');
		await terminal.until('Trim at the start end');
		terminal.type('++');
		await terminal.until('+  save');
		terminal.type('+');
		await terminal.until('Saved: yard/gate-hoop.json');
		expect(saved(home)).toMatchObject({
			shape: {
				points: [
					[0, 0],
					[0, '30 1/2'],
					[20, '30 1/2'],
					[20, 0],
				],
			},
		});
	});

	test('says once what holds for several bends', async () => {
		const { terminal } = start(new FakeHome(null, ROWS), { columns: 100, rows: 30 });
		await terminal.until('Jobs');
		const hooked = line('1', '+', '8', '30', '+', '0', '30', '1', '+', '0', '20', '1', '5', '9');
		terminal.type(`*1\r${TUBE}${hooked}`);
		await terminal.until('Trim at the start end');
		const text = terminal.text.replace(/\s+/g, ' ');
		expect(text.match(/the clamp needs/g)).toHaveLength(1);
		expect(text).toMatch(/Bend 2: the clamp needs .* The same at bend 3\./);
	});

	test('says once that straight is 0, and takes + alone for Enter alone at a name', async () => {
		const { terminal } = start();
		await terminal.until('Jobs');
		// + is no name where one is wanted, and what is usual where none is.
		terminal.type(`*1\r+${ENTER}`);
		await terminal.until('Write it on the keyboard');
		const plus = `+${ENTER}`;
		terminal.type(
			`\x7f${line('Gate hoop', '1', '2', '1 1/2', '.095', '+')}${plus}${plus}${line('4 1/2', '3', '+', '1', '+', '8')}`,
		);
		expect(await terminal.until('Angle of bend 1')).toContain('straight is 0');
		terminal.type(line('30', '+', '9'));
		expect(await terminal.until('Angle of bend 2')).not.toContain('straight is 0');
		expect(terminal.text).toContain('shop, radius 4 1/2 in');
	});

	test('says a fault at its question and keeps what was typed, to be mended', async () => {
		const { terminal } = start();
		await terminal.until('Jobs');
		terminal.type(`*1\r${line('Gate hoop', '1', '2', '1 1/2', '.95')}`);
		await terminal.until('at most half the outside diameter, 0.75');
		expect(terminal.text).toContain('> .95');
		terminal.type('\x7f\x7f095\n');
		await terminal.until('Length of the piece in hand');
	});

	test('goes back question by question, and keeps what is typed when the window changes', async () => {
		const { terminal } = start();
		await terminal.until('Jobs');
		terminal.type(`*1\r${line('Gate hoop', '1', '2')}1 1/`);
		await terminal.until('> 1 1/');
		for (const size of [
			{ columns: 60, rows: 20 },
			{ columns: 33, rows: 10 },
			{ columns: 160, rows: 50 },
		]) {
			terminal.resize(size);
			await terminal.until(size.columns < 60 ? 'needed' : '> 1 1/');
		}
		terminal.type('2\n');
		await terminal.until('Wall, in');
		terminal.type('/');
		await terminal.until('Outside diameter, in');
		terminal.type('///');
		await terminal.until('What the part is called');
		terminal.type('/');
		// What was answered is not thrown away unasked.
		await terminal.until('Leave without saving?');
		terminal.type('/');
		await terminal.until('What the part is called');
		terminal.type('/');
		await terminal.until('Leave without saving?');
		terminal.type('+');
		await terminal.until('Jobs');
	});

	test('takes no other file’s place unasked', async () => {
		const { terminal, home } = start();
		home.workshop.files.set('yard/gate-hoop.json', 'another');
		await terminal.until('Jobs');
		terminal.type(`*1\r${TUBE}${SHAPE}+`);
		await terminal.until('There is a file of that name');
		expect(home.workshop.files.get('yard/gate-hoop.json')).toBe('another');
		terminal.type('1\n');
		await terminal.until('Name of the file');
		terminal.type('Gate hoop, port\n');
		await terminal.until('Saved: yard/gate-hoop-port.json');
		expect(saved(home, 'yard/gate-hoop-port.json')).toEqual(SAVED);
	});

	test('stays on the screen when the disk refuses it', async () => {
		const { terminal, home } = start();
		home.workshop.fault = refusal('The job was not saved as yard/gate-hoop.json: the disk is full.', 5);
		await terminal.until('Jobs');
		terminal.type(`*1\r${TUBE}${SHAPE}+`);
		await terminal.until('the disk is full');
		home.workshop.fault = null;
		terminal.type('+');
		await terminal.until('Saved: yard/gate-hoop.json');
		expect(saved(home)).toEqual(SAVED);
	});
});

describe('a kept job', () => {
	function withFile() {
		const home = new FakeHome(null, ROWS);
		home.workshop.files.set('jobs/step.json', JSON.stringify({ ...SAVED, name: 'Boarding step' }));
		return start(home);
	}

	test('is changed, and written over only when that is said', async () => {
		const { terminal, home } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n5\n');
		await terminal.until('The job ');
		terminal.type(line('3', '2', '1'));
		await terminal.until('Now: 20');
		terminal.type(line('25', '40'));
		await terminal.until('Now: the opposite way');
		expect(terminal.text).toContain('+  as it is');
		terminal.type(line('1'));
		await terminal.until('+  save');
		terminal.type('+');
		await terminal.until('jobs/step.json is there already');
		terminal.type('2\n');
		await terminal.until('Saved: jobs/step.json');
		// What was saved comes before the other jobs.
		expect(terminal.text).toMatch(/Jobs\s+2 +Boarding step[^\n]*\n +3 +Aft arch/);
		expect(saved(home, 'jobs/step.json')).toMatchObject({
			name: 'Boarding step',
			shape: { bends: [SAVED.shape.bends[0], { straight: 25, angle: 40, rotation: 0 }, SAVED.shape.bends[2]] },
		});
	});

	test('with faults is mended here, from one to the next, and can be saved then', async () => {
		const { terminal, home } = withFile();
		const bends = SAVED.shape.bends.map((bend, at) => (at === 1 ? { ...bend, angle: 190 } : bend));
		const torn = { ...SAVED, tube: { ...SAVED.tube, wall: 'thick' }, shape: { ...SAVED.shape, bends } };
		home.workshop.files.set('jobs/torn.json', JSON.stringify(torn));
		await terminal.until('Jobs');
		terminal.type('4\n');
		await terminal.until('It cannot be bent yet');
		terminal.type('+');
		await terminal.until('Now: thick');
		expect(terminal.text).toContain('! tube.wall: found "thick"; write');
		terminal.type(line('0.095'));
		await terminal.until('Now: 20');
		terminal.type(line('20'));
		await terminal.until('Now: 190');
		terminal.type(line('36.869898'));
		await terminal.until('Now: the opposite way');
		terminal.type('+');
		await terminal.until('+  save');
		terminal.type('+');
		await terminal.until('jobs/torn.json is there already');
		terminal.type('2\n');
		await terminal.until('Saved: jobs/torn.json');
		expect(saved(home, 'jobs/torn.json')).toEqual(SAVED);
	});

	test('with a key that no question asks for says where that is mended', async () => {
		const { terminal, home } = withFile();
		home.workshop.files.set('jobs/torn.json', JSON.stringify({ ...SAVED, color: 'red' }));
		await terminal.until('Jobs');
		terminal.type('4\n+');
		await terminal.until('color: found "red"');
		expect(terminal.text).toContain('What no line here changes is mended in a text editor: jobs/torn.json');
		expect(terminal.text).not.toContain('+  save');
	});

	test.each(['[]', '{"shape":5}', '{"shape":{"bends":[3]}}', '{"tube":null,"checks":{}}'])(
		'that is hardly a job says what to do with it: %s',
		async (text) => {
			const { terminal, home } = withFile();
			home.workshop.files.set('jobs/torn.json', text);
			await terminal.until('Jobs');
			terminal.type('4\n+');
			await terminal.until('too far from a job file to be mended here');
			expect(terminal.text).toContain('2   look at the file again');
		},
	);

	test.each([{}, { units: 'furlong', tube: { od: [], wall: {} }, shape: { bends: [{}], points: [['x']] } }])(
		'of which next to nothing is right opens at its first fault all the same: %j',
		async (raw) => {
			const { terminal, home } = withFile();
			home.workshop.files.set('jobs/torn.json', JSON.stringify(raw));
			await terminal.until('Jobs');
			terminal.type('4\n+');
			await terminal.until(/What the part is called|in which unit/i);
			terminal.type('\x1b');
			await terminal.until('What to change');
			terminal.type('3\n');
			await terminal.until('Shape');
			terminal.type('/2\n');
			await terminal.until('Tube and die');
		},
	);

	test('shows what it comes to in fractions, decimals or millimeters, as one likes', async () => {
		const { terminal } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n5\n');
		await terminal.until(/mark +35 5\/16 in/);
		terminal.type('u');
		await terminal.until(/mark +35\.3\d+ in/);
		terminal.type('u');
		await terminal.until(/mark +89\d mm/);
		// Questions follow, and where a number is begun a letter is one of its unit.
		terminal.type('3\n2\n1\n');
		await terminal.until('Now: 20');
		expect(terminal.text).toMatch(/mark +89\d mm/);
		terminal.type('u');
		await terminal.until(/mark +35 5\/16 in/);
		expect(terminal.text).toContain('Now: 20');
	});

	test('is copied under another name', async () => {
		const { terminal, home } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n6\nBoarding step, port\n');
		await terminal.until('+  save');
		terminal.type('+');
		await terminal.until('Saved: yard/boarding-step-port.json');
		expect(saved(home, 'yard/boarding-step-port.json')).toEqual({ ...SAVED, name: 'Boarding step, port' });
	});

	test('has a check added and a bend taken out, whose faults keep it from being saved', async () => {
		const { terminal } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n5\n');
		await terminal.until('The job ');
		// An angle between the first and the last straight.
		terminal.type(`${line('5', '1', '2', '1', '4')}++`.replace('++', '+\n'));
		await terminal.until('checks: 1');
		// An offset leaves the direction as it was: what the first bend turned is left between first and last straight.
		terminal.type(line('5'));
		await terminal.until('angle 1: angle, should read 30°');
		terminal.type('/');
		await terminal.until('checks: 1');
		terminal.type(line('3', '3', '3'));
		await terminal.until('checks[0].angle.between[1]');
		expect(terminal.text).not.toContain('+  save');
	});

	test('has a bend put on a die of its own, told where the bends are listed', async () => {
		const { terminal, home } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n5\n');
		await terminal.until('The job ');
		terminal.type(line('3', '2', '4', '2', 'heel', '3'));
		await terminal.until('bend 2  mark');
		terminal.type(line('3'));
		await terminal.until('die heel');
		terminal.type('/+');
		await terminal.until(/Saved|There is a file/);
		terminal.type(line('2'));
		await terminal.until('Saved');
		const [path] = [...home.workshop.files.keys()];
		expect(saved(home, path)).toMatchObject({
			tooling: { dies: { heel: { clr: 3 } } },
			shape: { bends: [{}, { die: 'heel' }, {}] },
		});
	});

	test('opens at the bend that names a die which the job does not have', () => {
		const bends = SAVED.shape.bends.map((bend, i) => (i === 1 ? { ...bend, die: 'gone' } : bend));
		const raw = { ...SAVED, shape: { ...SAVED.shape, bends } };
		const form = formOf({ lookup: () => undefined, dies: [] }, raw, 'yard/gate-hoop.json', false);
		expect(form.drafts.at(-1)).toMatchObject({ at: 'bendDie', item: 1 });
		const { form: mended } = answeredForm(form, 'job');
		expect(mended.drafts.at(-1)).toMatchObject({ at: 'overview', file: { shape: { bends: SAVED.shape.bends } } });
	});

	test('opens at each figure and name of a further die that cannot be, and takes what is right', () => {
		const bends = SAVED.shape.bends.map((bend, i) => (i === 1 ? { ...bend, die: ' ' } : bend));
		const dies = { heel: { clr: 0.5, clamp: -2 }, ' ': { clr: 3 }, 'knee "b"': 7 };
		const raw = { ...SAVED, tooling: { ...SAVED.tooling, dies }, shape: { ...SAVED.shape, bends } };
		let form = formOf({ lookup: () => undefined, dies: [] }, raw, 'yard/gate-hoop.json', false);
		const answers = new Map([
			['heel clr', '3 1/2'],
			['heel clamp', ''],
			[' ', 'toe'],
			['knee "b"', 'knee'],
		]);
		for (let left = answers.size; left > 0; left--) {
			const { die, figure } = form.drafts.at(-1)!.part;
			const { form: next, message } = answeredForm(form, answers.get(figure ? `${die} ${figure}` : die!)!);
			expect(message).toBeNull();
			form = next;
		}
		const { at, file } = form.drafts.at(-1)!;
		expect(at).toBe('overview');
		expect(file.tooling!.dies).toEqual({ heel: { clr: '3 1/2' }, toe: { clr: 3 }, knee: {} });
		expect(file.shape!.bends![1]!.die).toBe('toe');
		expect(readJob(file)).not.toHaveProperty('faults');
	});

	test('asks how many are wanted first of all its figures', async () => {
		const { terminal, home } = withFile();
		await terminal.until('Jobs');
		terminal.type('3\n5\n');
		await terminal.until('The job ');
		terminal.type(line('4', '1', '10', '+', '2'));
		await terminal.until('Saved');
		expect([...home.workshop.files.values()].map((text) => JSON.parse(text).quantity)).toEqual([10]);
	});
});
