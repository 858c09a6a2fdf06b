import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerDraft } from '../../../src/job/draft/answer.ts';
import { currentAnswer } from '../../../src/job/draft/current.ts';
import { type Draft, draftOf, newDraft } from '../../../src/job/draft/draft.ts';
import { fileNameFor, fileText } from '../../../src/job/draft/file-text.ts';
import { draftFaults, draftPreview } from '../../../src/job/draft/preview.ts';
import type { FormShop } from '../../../src/job/draft/question.ts';
import { questionOf } from '../../../src/job/draft/questions.ts';
import { readJob } from '../../../src/job/read.ts';
import { growthOf, learnedPrior } from '../../../src/session/log/start.ts';
import { mechanicsPrior } from '../../../src/springback/mechanics.ts';
import { wrongAnswer } from '../../../src/words/job-form/pages.ts';
import { bendIn } from '../../helpers/disk/kept-home.ts';
import { toldFaults } from '../../helpers/disk/told-faults.ts';
import { lessonsKept } from '../../helpers/session/lessons-kept.ts';

const SHOP: FormShop = {
	lookup: (bender, die) => (bender === 'quay' && die === 'five' ? { clr: 5, growth: 1.02, clamp: 3 } : undefined),
	dies: [
		{ bender: 'quay', die: 'five', clr: 5, units: 'in' },
		{ bender: 'quay', die: 'bare', clr: null, units: 'in' },
	],
};

/** The draft after these answers, each of which must be taken. */
function following(answers: readonly string[], from: Draft = newDraft()): Draft {
	return answers.reduce((draft, text) => {
		const next = answerDraft(draft, text, SHOP);
		if ('faults' in next) {
			throw new Error(
				`"${text}" at ${draft.at}: ${toldFaults(next)
					.map(({ right }) => right)
					.join('; ')}`,
			);
		}
		return next.draft;
	}, from);
}

const TUBE = ['Ramp guard', 'in', '1020-dom', '1 1/4', '0.095', ''];
const TYPED_DIE = ['own', '', '', '4', '3', ''];
const KEPT_DIE = [JSON.stringify(['quay', 'five'])];
const START = [...TUBE, ...TYPED_DIE];

describe('the questions of a new job', () => {
	it('come one after the other, as the drawing is read', () => {
		const asked: string[] = [];
		const answers = [...START, 'bends', 'bend', '12', '30', 'bend', '9 3/8', '30', 'opposite', 'last', '14', '1/2', ''];
		let draft = newDraft();
		for (const text of answers) {
			asked.push(draft.at);
			draft = following([text], draft);
		}
		expect(asked.join(' ')).toBe(
			'name units material od wall stock die bender dieName clr clamp follow shape piece straight angle piece straight angle ' +
				'turn piece last trimStart trimEnd',
		);
		expect(draft.at).toBe('overview');
		expect(draft.file).toEqual({
			pullbook: 'job/1',
			name: 'Ramp guard',
			units: 'in',
			tube: { material: '1020-dom', od: '1 1/4', wall: 0.095 },
			tooling: { clr: 4, clamp: 3 },
			shape: {
				bends: [
					{ straight: 12, angle: 30, rotation: 0 },
					{ straight: '9 3/8', angle: 30, rotation: 180 },
				],
				last: 14,
			},
			trim: { start: '1/2' },
		});
		expect(draftFaults(draft, SHOP)).toEqual([]);
	});

	it('leave out what a kept die knows', () => {
		const draft = following([...TUBE, ...KEPT_DIE]);
		expect(draft.at).toBe('shape');
		expect(draft.file.tooling).toEqual({ bender: 'quay', die: 'five' });
	});

	it('ask for the radius that a kept die lacks', () => {
		expect(following([...TUBE, JSON.stringify(['quay', 'bare'])]).at).toBe('clr');
	});

	it('take a material by its strength', () => {
		const draft = following(['Ramp guard', 'mm', 'own', 'S235', '235', '210000']);
		expect(draft.file.tube).toEqual({ material: { name: 'S235', yield: 235, modulus: 210000 } });
		expect(draft.at).toBe('od');
	});

	it('take corner points, flat or not', () => {
		const flat = following([...START, 'points', 'flat', '0', '0', '20', '0', '30', '10', '50', '10', '', '', '']);
		expect(flat.file.shape).toEqual({
			points: [
				[0, 0],
				[20, 0],
				[30, 10],
				[50, 10],
			],
		});
		expect(draftFaults(flat, SHOP)).toEqual([]);
		const deep = following([...START, 'points', 'deep', '0', '0', '0', '20', '0', '0', '30', '10', '5', '', '', '']);
		expect(deep.file.shape).toEqual({
			points: [
				[0, 0, 0],
				[20, 0, 0],
				[30, 10, 5],
			],
		});
	});

	it.each([
		['corners', '3', '4', 36.869898, 5 - (2 * 4) / 3],
		['slope', '10', '30', 30, 20 - 8 * Math.tan(Math.PI / 12)],
	])('take an offset by %s as two bends', (piece, rise, second, angle, straight) => {
		const small = piece === 'corners' ? [...TUBE, 'own', '', '', '4', '', ''] : START;
		const draft = following([...small, 'bends', piece, '10', rise, second]);
		const [first, other] = draft.file.shape!.bends!;
		expect(first).toEqual({ straight: 10, angle, rotation: 0 });
		expect(other).toMatchObject({ angle, rotation: 180 });
		expect(other!.straight).toBeCloseTo(straight, 5);
		expect(draft.at).toBe('piece');
	});

	it('make an offset by the radius that the straights of the file are for, whatever the die grows by', () => {
		const draft = following([...TUBE, ...KEPT_DIE, 'bends', 'slope', '10', '8', '45']);
		const between = 8 / Math.sin(Math.PI / 4) - 2 * 5 * Math.tan(Math.PI / 8);
		expect(draft.file.shape!.bends![1]!.straight).toBeCloseTo(between, 5);
	});
});

describe('numbers', () => {
	it.each([
		['31 1/2', '31 1/2'],
		['3/8', '3/8'],
		['31+1/2', '31 1/2'],
		['3 + 3/8', '3 3/8'],
		['31+1/2+1', 32.5],
		['12 7/16 - 1', 11.4375],
		['9,375', 9.375],
		['362 mm', '362 mm'],
		['2\' 6 1/2"', '2\' 6 1/2"'],
		['24', 24],
	])('%s stands in the file as %s', (typed, kept) => {
		expect(following([...START, 'bends', 'bend', typed]).part.straight).toEqual(kept);
	});
});

describe('a fault', () => {
	it.each<[string, readonly string[], string, string, RegExp]>([
		['a number that is none', ['A', 'in', '1020-dom'], 'about one', 'tube.od', /a number/],
		['a wall thicker than the tube', ['A', 'in', '1020-dom', '1'], '0.6', 'tube.wall', /at most half/],
		['a name of blanks', [], '  ', 'name', /called/],
		['a radius under half the diameter', [...TUBE, 'own', '', ''], '0.5', 'tooling.clr', /at least half/],
		['a negative straight', [...START, 'bends', 'bend'], '-1', 'shape.bends[0].straight', /from 0 to 3930/],
		['an angle of 180', [...START, 'bends', 'bend', '10'], '180', 'shape.bends[0].angle', /from 0.01 to 179.99/],
		[
			'no way to go at all',
			[...START, 'bends', 'bend', '10', '20', 'bend', '9', '20'],
			'back',
			'job',
			/one of the numbers/,
		],
		[
			'an offset without room',
			[...START, 'bends', 'slope', '10', '1'],
			'60',
			'shape.bends[0]',
			/more between their corners/,
		],
		[
			'an offset that no bends make',
			[...START, 'bends', 'tangents', '10', '12'],
			'1',
			'shape.bends[0]',
			/a longer run/,
		],
		[
			'points in a line',
			[...START, 'points', 'flat', '0', '0', '9', '0', '20'],
			'0',
			'shape.points[1]',
			/out of the line/,
		],
		[
			'a trim below 0',
			[...START, 'bends', 'bend', '10', '20', 'bend', '9', '20', 'same', 'last', '9'],
			'-1',
			'trim.start',
			/or no/,
		],
	])('%s is said at its question', (_, before, text, at, right) => {
		const next = answerDraft(following(before), text, SHOP);
		expect(toldFaults(next)).toMatchObject([{ at, right: expect.stringMatching(right) }]);
		// What belongs to the file is not told who types a number.
		expect(wrongAnswer('faults' in next ? next.faults : [])).toMatch(
			/^(Not (?:(?!quotes|"\d).)+|"about one" cannot be read: .+); write (?:(?!quotes|"\d).)+\.$/,
		);
	});

	const HAT = [...START, 'bends', 'bend', '10', '20', 'bend', '9', '40', 'opposite', 'bend', '9', '20', 'opposite'];
	const CHECKED = [...HAT, 'last', '9', '', ''];
	it.each([
		['width', '1', '2', 'These two straights are 20° apart: choose one that runs parallel within 2°.'],
		['width', '3', '3', 'That is the same straight twice: choose another one.'],
		['angle', '3', '3', 'That is the same straight twice: choose another one.'],
		['out', '1', '4', 'These two straights run parallel and span no plane: choose another one.'],
	])('two straights that do not suit a check of kind %s are told at once: %s and %s', (kind, one, other, words) => {
		const draft = following([kind, one], { ...following(CHECKED), at: 'checkKind', item: 0 });
		const next = answerDraft(draft, other, SHOP);
		expect(wrongAnswer('faults' in next ? next.faults : [])).toBe(words);
	});

	it('two parallel straights have a width', () => {
		const draft = following(['width', '1', '4', '"outside"', '', ''], {
			...following(CHECKED),
			at: 'checkKind',
			item: 0,
		});
		expect(draft.file.checks).toEqual([{ name: 'width 1', width: { between: [1, 4], surface: 'outside' } }]);
	});

	it('is the one that a job file with that value has', () => {
		const draft = following(['A', 'in', '1020-dom', '1']);
		const file = { ...draft.file, tube: { ...draft.file.tube, wall: 0.6 } };
		const read = readJob(file, SHOP.lookup);
		const expected = 'faults' in read ? read.faults.filter(({ at }) => at === 'tube.wall') : [];
		expect(answerDraft(draft, '0.6', SHOP)).toEqual({ faults: expected });
		expect(expected).toHaveLength(1);
	});
});

const KEPT = {
	pullbook: 'job/1',
	name: 'Fender hoop',
	units: 'mm',
	tube: { material: '304-annealed', od: 33.7, wall: 2 },
	tooling: { clr: 100 },
	shape: {
		bends: [
			{ straight: 200, angle: 45, rotation: 0 },
			{ straight: 300, angle: 45, rotation: 0 },
		],
		last: 200,
	},
	checks: [{ name: 'width', span: { from: { end: 'start' }, to: { end: 'far' } } }],
};

/** The kept job with a question of the overview open. */
const opened = (more: Partial<Draft>): Draft => ({ ...draftOf(KEPT), ...more });

describe('a kept job that is changed', () => {
	it('goes back to the overview after each question', () => {
		const draft = following(['35'], opened({ at: 'od' }));
		expect(draft.at).toBe('overview');
		expect(draft.file).toEqual({ ...KEPT, tube: { ...KEPT.tube, od: 35 } });
	});

	it('has a bend changed, put before another, or added', () => {
		const bend = { piece: 'bend' as const };
		const changed = following(
			['250', '30', 'opposite'],
			opened({ at: 'straight', item: 1, put: 'instead', part: bend }),
		);
		expect(changed.at).toBe('overview');
		expect(changed.file.shape!.bends![1]).toEqual({ straight: 250, angle: 30, rotation: 180 });
		const before = following(
			['120', '20', 'own', '-90'],
			opened({ at: 'straight', item: 1, put: 'before', part: bend }),
		);
		expect(before.file.shape!.bends!.map(({ angle }) => angle)).toEqual([45, 20, 45]);
		expect(before.file.shape!.bends![1]!.rotation).toBe(-90);
		const added = following(['bend', '150', '60', 'same', 'last', '90'], opened({ at: 'piece' }));
		expect(added.at).toBe('overview');
		expect(added.file.shape!.bends).toHaveLength(3);
		expect(added.file.shape!.last).toBe(90);
	});

	it('has its ends coped one question at a time, and cut square again', () => {
		const ends = { start: { cope: { od: '1 7/8 in', angle: 60, offset: -5, turn: 30 } } };
		const coped = following(['cope', '1 7/8 in', '60', '-5', '30'], opened({ at: 'endFit', part: { end: 'start' } }));
		expect(coped.at).toBe('overview');
		expect(coped.file.ends).toEqual(ends);
		expect(readJob(coped.file, SHOP.lookup)).not.toHaveProperty('faults');
		// What is usual stays out of the file.
		const both = following(['cope', '40', '90', '', ''], { ...coped, at: 'endFit', part: { end: 'far' } });
		expect(both.file.ends).toEqual({ ...ends, far: { cope: { od: 40, angle: 90 } } });
		const again = { ...both, at: 'endFit', part: { end: 'start' } } as const;
		expect([currentAnswer(again), currentAnswer({ ...again, at: 'copeAngle' })]).toEqual(['cope', '60']);
		const square = following(['square'], again);
		expect(square.file.ends).toEqual({ far: { cope: { od: 40, angle: 90 } } });
		expect(following(['square'], { ...square, at: 'endFit', part: { end: 'far' } }).file).not.toHaveProperty('ends');
	});

	it.each([
		['copeOd', '0', 'ends.far.cope.od'],
		['copeAngle', '5', 'ends.far.cope.angle'],
		['copeOffset', '70', 'ends.far.cope.offset'],
	] as const)('has the faults of a cope found at its own question: %s', (at, typed, place) => {
		const far = { cope: { od: 40, angle: 90 } };
		const draft: Draft = { ...draftOf({ ...KEPT, ends: { far } }), at, part: { end: 'far' } };
		expect(answerDraft(draft, typed, SHOP)).toMatchObject({ faults: [{ at: place }] });
	});

	it('has its points added until there are no more, and the order said', () => {
		const points = [
			[0, 0],
			[300, 0],
			[600, 200],
		];
		const bare = { ...KEPT, checks: undefined, shape: { points } };
		const adding: Draft = { ...draftOf(bare), at: 'x', item: 3, put: 'add' };
		expect(questionOf(adding, SHOP)).toMatchObject({
			is: { code: 'x', point: 4, further: true },
			usual: { value: '' },
		});
		const more = following(['900', '200'], adding);
		expect(more).toMatchObject({ at: 'x', item: 4 });
		expect(following([''], more)).toMatchObject({
			at: 'overview',
			file: { shape: { points: [...points, [900, 200]] } },
		});
		const heat = following(['K 4711'], opened({ at: 'heat' }));
		expect(heat.file.tube).toEqual({ ...KEPT.tube, heat: 'K 4711' });
		const closed = following(['no'], opened({ at: 'mayOpen' }));
		expect(closed.file.mayOpen).toBe(false);
		expect(currentAnswer({ ...closed, at: 'mayOpen' })).toBe('no');
		expect(following(['yes'], { ...closed, at: 'mayOpen' }).file).toEqual(KEPT);
		expect(following(['12'], opened({ at: 'field', field: 'quantity' })).file.quantity).toBe(12);
		expect(answerDraft(opened({ at: 'field', field: 'quantity' }), '0', SHOP)).toMatchObject({
			faults: [{ at: 'quantity' }],
		});
	});

	it('takes a check of each kind, named by itself where it is given no name', () => {
		const parts: [kind: string, parts: unknown[], json: object][] = [
			['drop', [1, { bend: 2 }, 'across'], { drop: { from: 1, to: { bend: 2 }, surface: 'across' } }],
			['drop', [1, { straight: 3 }, 'centre'], { drop: { from: 1, to: { straight: 3 } } }],
			['angle', [1, 3], { angle: { between: [1, 3] } }],
			['span', [{ bend: 1 }, { end: 'far' }], { span: { from: { bend: 1 }, to: { end: 'far' } } }],
			['out', [1, 2, 3], { out: { plane: [1, 2], to: { straight: 3 } } }],
			['overall', ['y'], { overall: { axis: 'y' } }],
			['ovality', [2], { ovality: { bend: 2 } }],
		];
		for (const [kind, values, json] of parts) {
			const answers = [kind, ...values.map((value) => JSON.stringify(value)), '', ''];
			const draft = following(answers, opened({ at: 'checkKind', item: 1 }));
			expect(draft.file.checks![1]).toEqual({ name: `${kind} 2`, ...json });
			expect(draftFaults(draft, SHOP)).toEqual([]);
		}
	});

	it('has a field of its own set and left out again', () => {
		const set = following(['120'], opened({ at: 'field', field: 'tooling.maxAngle' }));
		expect(set.file.tooling).toEqual({ clr: 100, maxAngle: 120 });
		const risk = following(['0.05'], opened({ at: 'field', field: 'risk' }));
		expect(risk.file.risk).toBe(0.05);
		const out = following([''], { ...risk, at: 'field', field: 'risk' });
		expect('risk' in out.file).toBe(false);
		const tolerance = following(['1'], opened({ at: 'field', field: 'tolerance.under' }));
		expect(following([''], { ...tolerance, at: 'field', field: 'tolerance.under' }).file).toEqual(KEPT);
		const radius = following(['5 1/2'], opened({ at: 'field', field: 'shape.radius' }));
		expect(radius.file.shape).toEqual({ ...KEPT.shape, radius: '5 1/2' });
		expect(readJob(radius.file, SHOP.lookup)).toHaveProperty('job.shape.radius', 5.5);
		expect(following([''], { ...radius, at: 'field', field: 'shape.radius' }).file).toEqual(KEPT);
		const shape = following(['3/8'], opened({ at: 'field', field: 'tolerance.shape' }));
		expect(following(['1.5'], { ...shape, at: 'field', field: 'tolerance.direction' }).file.tolerance).toEqual({
			shape: '3/8',
			direction: 1.5,
		});
	});

	it('is refused a check that measures nothing', () => {
		const draft = following(['angle', '1'], opened({ at: 'checkKind', item: 1 }));
		expect(toldFaults(answerDraft(draft, '1', SHOP))).toMatchObject([
			{ at: 'checks[1].angle.between', right: expect.stringMatching(/two different straights/) },
		]);
	});
});

describe('what stands there already', () => {
	const bend = { item: 1, put: 'instead' as const, part: { piece: 'bend' as const } };
	it.each<[Partial<Draft>, string | null]>([
		[{ at: 'name' }, 'Fender hoop'],
		[{ at: 'material' }, '304-annealed'],
		[{ at: 'od' }, '33.7'],
		[{ at: 'stock' }, null],
		[{ at: 'straight', ...bend }, '300'],
		[{ at: 'angle', ...bend }, '45'],
		[{ at: 'turn', ...bend }, 'same'],
		[{ at: 'turnBy', ...bend }, '0'],
		[{ at: 'straight', ...bend, put: 'before' }, null],
		[{ at: 'last' }, '200'],
		[{ at: 'field', field: 'risk' }, null],
	])('at %o is the answer that leaves it so', (open, now) => {
		const draft = opened(open);
		expect(currentAnswer(draft)).toBe(now);
		if (now !== null && open.put === undefined) expect(following([now], draft).file).toEqual(KEPT);
	});

	it('is drawn until it is answered anew', () => {
		const draft = following(['310'], opened({ at: 'straight', ...bend }));
		const shape = draftPreview(draft, SHOP)?.job.shape;
		expect(shape?.kind === 'bends' ? shape.bends[1] : null).toEqual({ straight: 310, angle: 45, rotation: 0 });
	});

	it('leaves a bend as it is when each is given again', () => {
		let draft = opened({ at: 'straight', ...bend });
		while (draft.at !== 'overview') draft = following([currentAnswer(draft)!], draft);
		expect(draft.file).toEqual(KEPT);
	});
});

describe('what a draft comes to so far', () => {
	it('is nothing before the first angle, then a tube with a bend in hand', () => {
		expect(draftPreview(following([...START, 'bends', 'bend', '10']), SHOP)).toBeNull();
		const draft = following([...START, 'bends', 'bend', '10', '30']);
		expect(draftPreview(draft, SHOP)).toMatchObject({ ended: false, job: { shape: { last: 10 } } });
		expect(draftPreview(following(['bend', '20', '40'], draft), SHOP)).toMatchObject({ now: 2, ended: false });
	});

	it('is nothing before the die is known', () => {
		const draft = following(TUBE);
		const shape = { bends: [{ straight: 1, angle: 2, rotation: 0 }] };
		expect(draftPreview({ ...draft, file: { ...draft.file, shape } }, SHOP)).toBeNull();
	});

	it('shows an offset before it is known which way it goes', () => {
		const draft = following(['bend', '10', '30', 'slope', '20', '8', '45'], following([...START, 'bends']));
		expect(draft.at).toBe('turn');
		const shape = draftPreview(draft, SHOP)?.job.shape;
		expect(shape?.kind === 'bends' ? shape.bends.map(({ angle }) => angle) : []).toEqual([30, 45, 45]);
	});

	it('grows point by point', () => {
		const two = following([...START, 'points', 'flat', '0', '0', '20', '0', '30']);
		expect(draftPreview(two, SHOP)).toBeNull();
		expect(draftPreview(following(['10'], two), SHOP)?.job.shape).toEqual({
			kind: 'points',
			points: [
				[0, 0, 0],
				[20, 0, 0],
				[30, 10, 0],
			],
		});
	});
});

describe('the text of a job file', () => {
	it('reads back as it was, one bend a line', () => {
		const text = fileText(draftOf(KEPT).file);
		expect(JSON.parse(text)).toEqual(KEPT);
		expect(text).toContain('\t\t\t{ "straight": 200, "angle": 45, "rotation": 0 },\n');
		expect(text).toContain('\n\t"tube": { "material": "304-annealed", "od": 33.7, "wall": 2 },\n');
	});

	it.each([
		['Ramp guard, port', 'ramp-guard-port.json'],
		['Bügel №2', 'bugel-no2.json'],
		['***', 'job.json'],
	])('goes under a name made of the part: %s', (name, file) => {
		expect(fileNameFor(name)).toBe(file);
	});
});

it('every question of every place says what it asks', () => {
	const draft = following([...START, 'bends', 'bend', '10', '30']);
	expect(questionOf(draft, SHOP)).toMatchObject({
		is: { code: 'piece', bend: 2 },
		kind: 'choice',
		usual: { value: 'bend' },
	});
	expect(() => questionOf({ ...draft, at: 'overview' }, SHOP)).toThrow('Nothing is asked');
	expect(() => questionOf({ ...draft, at: 'field', field: 'tube.color' }, SHOP)).toThrow('no field "tube.color"');
});

describe('what a job comes to while it is written', () => {
	let home = '';
	beforeAll(() => {
		home = mkdtempSync(join(tmpdir(), 'form-'));
	});
	afterAll(() => rmSync(home, { recursive: true }));

	it('has the growth that layout and session expect of its die and tube, once sessions taught it', () => {
		const whole = following([...START, 'bends', 'bend', '12', '30', 'last', '14', '', '']);
		const { job, growth } = draftPreview(whole, SHOP)!;
		expect(growth).toEqual({ value: mechanicsPrior(job.tube, 4, job.tube.material).growth, from: 'expected' });
		bendIn(home, { day: 1, job, seed: 4 });
		const lessons = lessonsKept(home);
		const taught = draftPreview(whole, { ...SHOP, lessons: () => lessons })!.growth;
		expect(taught).toEqual(growthOf(learnedPrior(job, lessons)));
		expect(taught.value).not.toBe(growth.value);
	});
});
