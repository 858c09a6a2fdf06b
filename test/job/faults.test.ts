import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { materialKeys } from '../../src/springback/materials.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { toldFaults } from '../helpers/disk/told-faults.ts';

const faultsOf = (value: unknown) => toldFaults(readJob(value));

const check = (measure: object) => [{ name: 'c', ...measure }];

/** Place changed, new value, place of the fault, what it must say would be right. */
const CASES: [place: string, to: unknown, at: string, right: string][] = [
	['pullbook', 'job/2', 'pullbook', '"job/1"'],
	['pullbook', undefined, 'pullbook', '"job/1"'],
	['name', ' ', 'name', 'a name for the part'],
	['units', 'cm', 'units', '"in" or "mm"'],
	['units', undefined, 'units', '"in" or "mm"'],
	['color', 'red', 'color', 'no such key; known here: pullbook, name'],
	['__proto__x', 1, '__proto__x', 'no such key'],
	['tube', undefined, 'tube', 'an object'],
	['tube', [], 'tube', 'an object'],
	['tube.material', 'unobtainium', 'tube.material', materialKeys.join(', ')],
	['tube.material', undefined, 'tube.material', '6061-t6'],
	['tube.material', { name: 'x', yield: 350, modulus: 200_000 }, 'tube.material.modulus', 'ksi, from 100 to 100000'],
	['tube.material', { name: 'x', yield: 50 }, 'tube.material.modulus', 'the elastic modulus'],
	['tube.material', { name: 'x', yield: 50, modulus: 29_000, e: 1 }, 'tube.material.e', 'no such key'],
	['tube.od', 0, 'tube.od', 'a length from 0.0394 to 39.3 in inches'],
	['tube.od', '1 1', 'tube.od', 'stands beside a number'],
	['tube.od', Number.NaN, 'tube.od', 'a length from 0.0394 to 39.3'],
	['tube.od', undefined, 'tube.od', 'a length from 0.0394 to 39.3'],
	['tube.wall', 0.76, 'tube.wall', 'at most half the outside diameter, 0.75'],
	['tube.wall', 'thick', 'tube.wall', 'a number is missing'],
	['tube.stock', -1, 'tube.stock', 'or no "stock"'],
	['tube.stock', 1e9, 'tube.stock', 'a length from 0.394 to 3930'],
	['tooling.clr', undefined, 'tooling.clr', 'the center-line radius of the die'],
	['tooling.clr', 0.7, 'tooling.clr', 'at least half the outside diameter, 0.75'],
	['tooling.growth', 0, 'tooling.growth', 'from 0.5 to 2'],
	['tooling.stretch', 0.5, 'tooling.stretch', 'below 0.5'],
	['tooling.clamp', -1, 'tooling.clamp', 'a length from 0 to '],
	['tooling.follow', -1, 'tooling.follow', 'a length from 0 to '],
	['tooling.maxAngle', 0, 'tooling.maxAngle', 'the largest dial angle'],
	['tooling.dialStep', 0, 'tooling.dialStep', 'the smallest division of the dial'],
	['tooling.tape', 0, 'tooling.tape', 'a length from 0.000394 to 3.93'],
	['tooling.floor', -3, 'tooling.floor', 'a length from 0 to '],
	['tooling.bender', '', 'tooling.bender', "the bender's name"],
	['tooling.die', 4, 'tooling.die', "the die's name"],
	['tooling.radius', 4, 'tooling.radius', 'no such key'],
	['mayOpen', 'no', 'mayOpen', 'true or false'],
	['quantity', 0, 'quantity', 'a whole number from 1 to 10000'],
	['quantity', 2.5, 'quantity', 'a whole number'],
	['tube.heat', 4711, 'tube.heat', 'a text in quotes'],
	['tooling.dies', [], 'tooling.dies', 'each under its name'],
	['tooling.dies', { '4 in': 4 }, 'tooling.dies["4 in"]', 'an object'],
	['tooling.dies', { '4 in': { tape: 1 } }, 'tooling.dies["4 in"].tape', 'known here: clr, growth'],
	['tooling.dies', { '4 in': { clr: 0.7 } }, 'tooling.dies["4 in"].clr', 'half the outside diameter, 0.75'],
	['tooling.dies', { '5 clr 1.5 od': {} }, 'tooling.dies["5 clr 1.5 od"]', "another name than the job's own die has"],
	['tooling.dies', { ' ': {} }, 'tooling.dies[" "]', "a die's name"],
	['shape.bends', [{ straight: 9, angle: 9, rotation: 0, die: '4 in' }], 'shape.bends[0].die', 'one of "5 clr 1.5 od"'],
	['ends', { end: {} }, 'ends.end', 'known here: start, far'],
	['ends', { far: {} }, 'ends.far.cope', 'od, angle, offset, turn'],
	['ends', { far: { cope: { od: 2 } } }, 'ends.far.cope.angle', 'the angle between the center lines'],
	['ends', { far: { cope: { od: 2, angle: 5 } } }, 'ends.far.cope.angle', 'from 10 to 170'],
	[
		'ends',
		{ start: { cope: { od: 2, angle: 90, offset: -1.75 } } },
		'ends.start.cope.offset',
		'less than half of both diameters together, 1.75',
	],
	['shape', undefined, 'shape', '"bends" and "last", or with "points"'],
	['shape', {}, 'shape', 'one of the two'],
	[
		'shape.points',
		[
			[0, 0],
			[20, 0],
			[20, 20],
		],
		'shape',
		'one of the two',
	],
	['shape.bends', [], 'shape.bends', 'bends, at least one'],
	['shape.bends', {}, 'shape.bends', 'bends, at least one'],
	['shape.last', undefined, 'shape.last', 'a length from 0 to '],
	['shape.last', -1, 'shape.last', 'a length from 0 to '],
	['shape.bends.0.straight', -0.1, 'shape.bends[0].straight', 'a length from 0 to '],
	['shape.bends.1.straight', '9 -3/8', 'shape.bends[1].straight', 'write 9-3/8 for a mixed number'],
	['shape.bends.1.angle', 0, 'shape.bends[1].angle', 'from 0.01 to 179.99'],
	['shape.bends.1.angle', 180, 'shape.bends[1].angle', 'from 0.01 to 179.99'],
	['shape.bends.1.angle', '30', 'shape.bends[1].angle', 'a number without quotes'],
	['shape.bends.1.rotation', undefined, 'shape.bends[1].rotation', 'a rotation in degrees'],
	['shape.bends.1.rotation', Number.POSITIVE_INFINITY, 'shape.bends[1].rotation', 'a rotation in degrees'],
	['shape.bends.1.angel', 3, 'shape.bends[1].angel', 'known here: straight, angle, rotation'],
	['shape.bends.1', 7, 'shape.bends[1]', 'an object'],
	['trim.start', -1, 'trim.start', 'a length from 0 to '],
	['trim.middle', 1, 'trim.middle', 'known here: start, end'],
	['tolerance.under', -0.5, 'tolerance.under', 'a tolerance in degrees'],
	['tolerance.length', 0, 'tolerance.length', 'a length from 0.000394 to 39.3'],
	['tolerance.rotation', 0, 'tolerance.rotation', 'from 0.01 to 90'],
	['tolerance.shape', 0, 'tolerance.shape', 'a length from 0.000394 to 393'],
	['tolerance.shape', '1/4 deg', 'tolerance.shape', 'a length from 0.000394 to 393'],
	['tolerance.direction', 0, 'tolerance.direction', 'from 0.01 to 90'],
	['tolerance.direction', '1', 'tolerance.direction', 'a number without quotes'],
	['tolerance.form', 1, 'tolerance.form', 'known here: under, over, length, rotation, shape, direction'],
	['tolerance', { under: 0, over: 0 }, 'tolerance', 'not both 0'],
	['risk', 0, 'risk', 'from 0.0001 to 0.5'],
	['risk', 0.51, 'risk', 'from 0.0001 to 0.5'],
	['notes', ['a'], 'notes', 'a text in quotes'],
	['checks', {}, 'checks', 'a list'],
	['checks', [3], 'checks[0]', 'an object'],
	['checks', check({}), 'checks[0]', 'exactly one of drop, angle, span, out, width, overall, ovality'],
	['checks', check({ angle: {}, span: {} }), 'checks[0]', 'exactly one of'],
	['checks', [{ angle: { between: [1, 2] } }], 'checks[0].name', 'a name'],
	['checks', check({ angle: { between: [1, 2] }, when: 1 }), 'checks[0].when', 'no such key'],
	['checks', check({ angle: { between: [1, 4] } }), 'checks[0].angle.between[1]', 'a straight, 1 to 3'],
	['checks', check({ angle: { between: [2, 2] } }), 'checks[0].angle.between', 'two different straights'],
	['checks', check({ angle: { between: [1, 2] }, tolerance: 0 }), 'checks[0].tolerance', 'degrees, from 0.01 to 90'],
	['checks', check({ drop: { from: 0, to: { bend: 2 } } }), 'checks[0].drop.from', 'a straight, 1 to 3'],
	['checks', check({ drop: { from: 1, to: { bend: 3 } } }), 'checks[0].drop.to.bend', 'a bend, 1 to 2'],
	['checks', check({ drop: { from: 1, to: { straight: 1.5 } } }), 'checks[0].drop.to.straight', 'a straight, 1 to 3'],
	['checks', check({ drop: { from: 1, to: { straight: 1 } } }), 'checks[0].drop.to', 'another straight than 1'],
	['checks', check({ drop: { from: 1 } }), 'checks[0].drop.to', '{ "bend": its number } or { "straight"'],
	['checks', check({ drop: { from: 1, to: { bend: 2, straight: 2 } } }), 'checks[0].drop.to', '{ "bend"'],
	['checks', check({ drop: { from: 1, to: { bend: 2 }, surface: 'top' } }), 'checks[0].drop.surface', '"across"'],
	['checks', check({ drop: 4 }), 'checks[0].drop', 'an object'],
	[
		'checks',
		check({ span: { from: { end: 'near' }, to: { bend: 1 } } }),
		'checks[0].span.from.end',
		'"start" or "far"',
	],
	['checks', check({ span: { from: { bend: 1 }, to: { bend: 1 } } }), 'checks[0].span.to', 'another place'],
	['checks', check({ out: { plane: [1, 2], to: { straight: 4 } } }), 'checks[0].out.to.straight', '1 to 3'],
	['checks', check({ out: { plane: [1], to: { straight: 3 } } }), 'checks[0].out.plane', 'two different straights'],
	[
		'checks',
		check({ width: { between: [1, 3] } }),
		'checks[0].width.between',
		'parallel within 2°: these are 48.4° apart',
	],
	['checks', check({ width: { between: [1, 4] } }), 'checks[0].width.between[1]', 'a straight, 1 to 3'],
	['checks', check({ overall: { axis: 'w' } }), 'checks[0].overall.axis', '"x", "y" or "z", an axis of bend 1'],
	['checks', check({ overall: {} }), 'checks[0].overall.axis', 'an axis of bend 1'],
	['checks', check({ ovality: { bend: 3 } }), 'checks[0].ovality.bend', 'a bend, 1 to 2'],
	[
		'checks',
		check({ ovality: { bend: 1 }, tolerance: 1 }),
		'checks[0].tolerance',
		'the ratio, of 0.001 or more and below 1',
	],
];

it('a width names a surface that can be measured to', () => {
	const offset = change(plainJobFile(), 'shape.bends', [
		{ straight: 12, angle: 40, rotation: 0 },
		{ straight: 9, angle: 40, rotation: 180 },
	]);
	const checks = check({ width: { between: [1, 3], surface: 'over' } });
	const [fault] = faultsOf(change(offset as object, 'checks', checks));
	expect(fault).toMatchObject({ at: 'checks[0].width.surface', found: '"over"' });
	expect(fault!.right).toContain('"outside", "inside" or "center"');
});

describe('a fault is named with its place and what would be right', () => {
	it.each(CASES)('%s = %j', (place, to, at, right) => {
		const faults = faultsOf(change(plainJobFile(), place, to));
		expect(faults.map((fault) => fault.at)).toEqual([at]);
		expect(faults[0]?.right).toContain(right);
		expect(faults[0]?.found).not.toBe('');
	});

	it('says what stands there', () => {
		expect(faultsOf(change(plainJobFile(), 'shape.bends.1.angle', 200))[0]?.found).toBe('200');
		expect(faultsOf(change(plainJobFile(), 'shape.last', undefined))[0]?.found).toBe('nothing');
		expect(faultsOf(change(plainJobFile(), 'name', 'x'.repeat(3).split('')))[0]?.found).toBe('["x","x","x"]');
	});

	it('says of a length that cannot be read how one is written, and what is wrong with this one', () => {
		expect(faultsOf(change(plainJobFile(), 'tooling.clr', 'abc'))[0]?.right).toBe(
			'a length from 0.0394 to 787 in inches, as 9.375 or "9 3/8" (a number is missing before "abc"), or no "clr"',
		);
		expect(faultsOf(change(plainJobFile(), 'shape.last', '12 1/0'))[0]?.right).toBe(
			'a length from 0 to 3930 in inches, as 9.375 or "9 3/8" (in a mixed number the fraction is under 1, not 1/0)',
		);
	});

	it.each([null, 3, 'job', []])('refuses %j for a whole job', (value) => {
		expect(faultsOf(value).map(({ at }) => at)).toEqual(['job']);
	});

	it('names the second of two checks with one name', () => {
		const angle = { between: [1, 2] };
		const faults = faultsOf({
			...plainJobFile(),
			checks: [
				{ name: 'a', angle },
				{ name: 'a', angle },
			],
		});
		expect(faults).toEqual([{ at: 'checks[1].name', found: '"a"', right: expect.stringContaining('checks[0]') }]);
	});
});

describe('all faults come in one go', () => {
	it('wherever they stand', () => {
		const places = CASES.filter(([place]) =>
			/^(risk|tube\.stock|tooling\.tape|shape\.bends\.\d\.\w+|trim)/.test(place),
		);
		const one = new Map(places.map((row) => [row[2], row]));
		const job = [...one.values()].reduce<unknown>((value, [place, to]) => {
			return change(value as object, place, to);
		}, plainJobFile());
		expect(new Set(faultsOf(job).map(({ at }) => at))).toEqual(new Set(one.keys()));
		expect(one.size).toBeGreaterThan(8);
	});

	it('also parallel straights beside a bad length', () => {
		const job = change(plainJobFile(), 'shape.bends', [
			{ straight: -12, angle: 40, rotation: 0 },
			{ straight: 9, angle: 40, rotation: 180 },
		]);
		const faults = faultsOf({ ...(job as object), checks: check({ out: { plane: [1, 3], to: { straight: 2 } } }) });
		expect(faults.map(({ at }) => at)).toEqual(['shape.bends[0].straight', 'checks[0].out.plane']);
		expect(faults[1]?.right).toContain('not parallel');
	});

	it('also antiparallel straights, and none for a plane that there is', () => {
		const bends = [
			{ straight: 12, angle: 90, rotation: 0 },
			{ straight: 20, angle: 90, rotation: 0 },
		];
		const job = change(plainJobFile(), 'shape.bends', bends) as object;
		const out = (plane: number[]) => faultsOf({ ...job, checks: check({ out: { plane, to: { straight: 3 } } }) });
		expect(out([1, 3]).map(({ at }) => at)).toEqual(['checks[0].out.plane']);
		expect(out([1, 2])).toEqual([]);
	});
});

describe('points', () => {
	const points = (list: unknown) => faultsOf(change(plainJobFile(), 'shape', { points: list }));
	it.each([
		[
			'too few',
			[
				[0, 0],
				[20, 0],
			],
			['shape.points'],
		],
		['not a point', [[0, 0], [20], [20, 20]], ['shape.points[1]']],
		[
			'no number',
			[
				[0, 0],
				[20, 'x'],
				[20, 20],
			],
			['shape.points[1][1]'],
		],
		[
			'in a line',
			[
				[0, 0],
				[20, 0],
				[40, 0],
				[40, 30],
			],
			['shape.points[1]'],
		],
		[
			'coinciding',
			[
				[0, 0],
				[20, 0],
				[20, 0],
				[40, 30],
			],
			['shape.points[2]'],
		],
		[
			'turning back',
			[
				[0, 0],
				[20, 0],
				[5, 0],
				[5, 30],
			],
			['shape.points[1]'],
		],
		// Two corners of 90 degrees need 5 + 5 between them.
		[
			'closer than their setbacks',
			[
				[0, 0],
				[20, 0],
				[20, 9.9],
				[40, 9.9],
			],
			['shape.points[2]'],
		],
		[
			'closer than their setbacks to an end',
			[
				[0, 0],
				[4.9, 0],
				[4.9, 20],
			],
			['shape.points[1]'],
		],
	] as const)('%s', (_, list, places) => {
		expect(points(list).map(({ at }) => at)).toEqual(places);
	});

	it('all at once, on both sides of a bad one', () => {
		const list = [
			[0, 0],
			[4, 0],
			[4, 20],
			[4, 40],
			[4, 60],
			['?', 60],
			[60, 0],
			[80, 0],
			[80, 4],
			[99, 4],
		];
		expect(points(list).map(({ at }) => at)).toEqual([
			'shape.points[5][0]',
			'shape.points[2]',
			'shape.points[3]',
			'shape.points[1]',
			'shape.points[8]',
		]);
	});

	it('judges them by the finished radius', () => {
		const job = change(plainJobFile(), 'shape', {
			points: [
				[0, 0],
				[5.05, 0],
				[5.05, 20],
			],
		});
		expect(faultsOf(job)).toEqual([]);
		expect(faultsOf(change(job as object, 'tooling.growth', 1.02)).map(({ at }) => at)).toEqual(['shape.points[1]']);
	});

	it('names the two bends that a stated growth leaves no straight between, and how long it must be', () => {
		// By hand: .3 in more radius takes .3 (tan 30 + tan 20) = .2824 more between the corners of a 60 and a 40.
		const bends = [
			{ straight: 10, angle: 60, rotation: 0 },
			{ straight: 0.2, angle: 40, rotation: 90 },
		];
		const job = change(plainJobFile(), 'shape', { bends, last: 10 }) as object;
		const withoutGrowth = change(job, 'checks', undefined);
		expect(faultsOf(withoutGrowth)).toEqual([]);
		const [fault, ...others] = faultsOf(change(withoutGrowth as object, 'tooling.growth', 1.06));
		expect(others).toEqual([]);
		expect(fault).toEqual({
			at: 'shape.bends[1].straight',
			found: '0.2',
			right: "0.283 or more: at a finished radius of 5.3 bends 1 and 2 need that room between the drawing's corners",
		});
		// A drawing of a larger radius has the corners further from its straights.
		const larger = change(withoutGrowth as object, 'shape.radius', 5.3) as object;
		expect(faultsOf(change(larger, 'tooling.growth', 1.06))).toEqual([]);
	});

	it('take no "last"', () => {
		const job = change(plainJobFile(), 'shape', {
			points: [
				[0, 0],
				[20, 0],
				[20, 20],
			],
			last: 3,
		});
		expect(faultsOf(job)).toEqual([{ at: 'shape.last', found: '3', right: expect.stringContaining('points') }]);
	});
});

describe('two shapes in one file', () => {
	it('are refused, and the faults in each said all the same', () => {
		const shape = { bends: [{ straight: -2, angle: 200, rotation: 0 }], last: 3, points: [[0, 0]] };
		const places = faultsOf(change(plainJobFile(), 'shape', shape)).map((fault) => fault.at);
		expect(places).toEqual(['shape', 'shape.points', 'shape.bends[0].straight', 'shape.bends[0].angle']);
	});
});
