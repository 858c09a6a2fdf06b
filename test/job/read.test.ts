import { describe, expect, it } from 'vitest';
import { type GoodJob, readJob } from '../../src/job/read.ts';
import type { ToolingLookup } from '../../src/job/tooling.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { toldFaults } from '../helpers/disk/told-faults.ts';

function good(value: unknown, lookup?: ToolingLookup): GoodJob {
	const read = readJob(value, lookup);
	if ('faults' in read) throw new Error(JSON.stringify(read.faults));
	return read;
}

describe('what a job leaves open', () => {
	it('has the defaults of a job in inches', () => {
		const { job, fromBender } = good(plainJobFile());
		expect(job.tooling).toEqual({
			bender: 'shop',
			die: '5 clr 1.5 od',
			clr: 5,
			growth: null,
			stretch: 0,
			clamp: 0,
			follow: 0,
			markOffset: 0,
			maxAngle: 180,
			dialStep: 0.5,
			tape: 1 / 16,
			floor: null,
		});
		expect(job).toMatchObject({
			trim: { start: 0, end: 0 },
			tolerance: { under: 0.5, over: 0.5, length: 1 / 16, rotation: 1, shape: 1 / 4, direction: 1 },
			risk: 0.02,
			checks: [],
			notes: '',
		});
		expect(fromBender).toEqual([]);
	});

	it('has the defaults of a job in mm', () => {
		const { job } = good(change({ ...plainJobFile(), units: 'mm' }, 'tooling', { clr: '5 in' }));
		expect([job.tooling.tape, job.tolerance.length, job.tooling.die]).toEqual([1, 1.5, '127 clr 1.5 od']);
		// 1020-dom, 60 ksi and 29 000 ksi, in MPa. Source: NIST SP 811 (from memory): 1 ksi = 6.894757 MPa.
		expect(job.tube.material).toEqual({ name: '1020-dom', yield: 60 * 6.894757, modulus: 29_000 * 6.894757 });
		expect(job.tube.stock).toBe(80);
		expect(good(change(plainJobFile(), 'tube.stock', undefined)).job.tube.stock).toBeNull();
	});

	it('keeps what is given of a tolerance and fills the rest', () => {
		const { job } = good({ ...plainJobFile(), tolerance: { over: 0.25, length: '1/8' } });
		expect(job.tolerance).toEqual({ under: 0.5, over: 0.25, length: 0.125, rotation: 1, shape: 0.5, direction: 1 });
		const told = good({ ...plainJobFile(), tolerance: { length: '1/8', shape: '3/16', direction: 0.5 } }).job;
		expect(told.tolerance).toMatchObject({ length: 0.125, shape: 0.1875, direction: 0.5 });
		const mm = good({ ...plainJobFile(), units: 'mm' }).job;
		expect(mm.tolerance.shape).toBe(6);
	});
});

describe('what is told of the order and the ends', () => {
	it('is what holds where nothing is said', () => {
		const { job } = good(plainJobFile());
		expect(job).toMatchObject({ mayOpen: true, quantity: 1 });
		for (const key of ['ends', 'heat', 'dies']) expect(JSON.stringify(job)).not.toContain(`"${key}"`);
	});

	it('is kept as it is told', () => {
		const cope = { od: '2 in', angle: 60, turn: 270 };
		const told = { mayOpen: false, quantity: 12, ends: { far: { cope } } };
		const { job } = good(change({ ...plainJobFile(), ...told }, 'tube.heat', 'K4711-2'));
		expect(job).toMatchObject({ mayOpen: false, quantity: 12, tube: { heat: 'K4711-2' } });
		expect(job.ends).toEqual({ far: { cope: { od: 2, angle: 60, offset: 0, turn: -90 } } });
	});

	it('names the die of each bend that is not bent on the own one', () => {
		const dies = { '3 1/2 tight': { clr: '3 1/2', clamp: 2, markOffset: '1/8' } };
		const bends = [
			{ straight: 12, angle: 40, rotation: 0, die: '3 1/2 tight' },
			{ straight: 9, angle: 30, rotation: 90, die: '5 clr 1.5 od' },
		];
		const { job } = good({ ...plainJobFile(), tooling: { clr: 5, dies }, shape: { bends, last: 14 } });
		expect(job.tooling.dies).toEqual({ '3 1/2 tight': { clr: 3.5, clamp: 2, markOffset: 0.125 } });
		expect(job.shape).toMatchObject({ bends });
	});
});

describe('the bender and die as kept', () => {
	const kept: ToolingLookup = (bender, die) =>
		bender === 'quay' && die === '5 rail'
			? { clr: 5, clamp: 3.5, growth: 1.01, maxAngle: 110, floor: null }
			: undefined;
	const named = (tooling: object) => ({ ...plainJobFile(), tooling });

	it('give what the job leaves out, and are named', () => {
		const { job, fromBender } = good(named({ bender: 'quay', die: '5 rail', maxAngle: 120 }), kept);
		expect(job.tooling).toMatchObject({ clr: 5, clamp: 3.5, growth: 1.01, maxAngle: 120, follow: 0, floor: null });
		expect(fromBender).toEqual(['tooling.clr', 'tooling.growth', 'tooling.clamp']);
	});

	it('are asked for by the default names and in the units of the job', () => {
		const asked: unknown[] = [];
		good(plainJobFile(), (...names) => {
			asked.push(names);
			return undefined;
		});
		expect(asked).toEqual([['shop', '5 clr 1.5 od', 'in']]);
	});

	it('do not stand in for a value that is given but faulty', () => {
		const read = readJob(named({ bender: 'quay', die: '5 rail', clamp: -1 }), kept);
		expect('faults' in read && read.faults.map(({ at }) => at)).toEqual(['tooling.clamp']);
	});

	it('are held against the tube as the job file is', () => {
		const read = readJob(change(named({ bender: 'quay', die: '5 rail' }), 'tube.od', 12), kept);
		expect(toldFaults(read)).toEqual([
			{ at: 'tooling.clr', found: '5, kept with the bender and die', right: expect.stringContaining('6') },
		]);
	});

	it('are named in the fault when they know no radius', () => {
		const read = readJob(named({ bender: 'quay', die: '9 rail' }), kept);
		expect(toldFaults(read)[0]?.right).toContain('bender "quay" and die "9 rail"');
	});
});

describe('what a job says', () => {
	it('may be written as a fabricator writes it', () => {
		const job = good({
			...plainJobFile(),
			tube: { material: { name: 'mill', yield: 52, modulus: 29_500 }, od: '1 1/2', wall: '.120', stock: `6' 8"` },
			shape: { bends: [{ straight: '12-3/8', angle: 40, rotation: 0 }], last: '254 mm' },
			trim: { start: '1/2' },
		}).job;
		expect(job.tube).toEqual({
			material: { name: 'mill', yield: 52, modulus: 29_500 },
			od: 1.5,
			wall: 0.12,
			stock: 80,
		});
		expect(job.shape).toEqual({ kind: 'bends', bends: [{ straight: 12.375, angle: 40, rotation: 0 }], last: 10 });
		expect(job.trim).toEqual({ start: 0.5, end: 0 });
	});

	it.each([
		[270, -90],
		[-180, 180],
		[540, 180],
		[-725, -5],
		[180, 180],
	])('rotation %d is kept as %d', (given, kept) => {
		const { shape } = good(change(plainJobFile(), 'shape.bends.1.rotation', given)).job;
		expect(shape.kind === 'bends' && shape.bends[1]?.rotation).toBe(kept);
	});

	it('keeps points as points in space', () => {
		const points = [
			[0, 0],
			['20', 0, '1/2'],
			[20, 30, 8],
		];
		expect(good(change(plainJobFile(), 'shape', { points })).job.shape).toEqual({
			kind: 'points',
			points: [
				[0, 0, 0],
				[20, 0, 0.5],
				[20, 30, 8],
			],
		});
	});

	it('has checks of all kinds, each with its tolerance', () => {
		const checks = [
			{ name: 'd', drop: { from: 1, to: { bend: 2 } } },
			{ name: 'e', drop: { from: 1, to: { straight: 3 }, surface: 'across' }, tolerance: '1/8' },
			{ name: 'a', angle: { between: [1, 3] } },
			{ name: 's', span: { from: { end: 'start' }, to: { bend: 2 } } },
			{ name: 'o', out: { plane: [1, 2], to: { straight: 3 } } },
			{ name: 'w', width: { between: [3, 1], surface: 'inside' } },
			{ name: 'c', width: { between: [1, 3] } },
			{ name: 'l', overall: { axis: 'z' }, tolerance: '1/8' },
			{ name: 'r', ovality: { bend: 1 } },
		];
		const offset = change(plainJobFile(), 'shape.bends', [
			{ straight: 12, angle: 40, rotation: 0 },
			{ straight: 9, angle: 38.5, rotation: 180 },
		]);
		expect(good({ ...(offset as object), checks }).job.checks).toEqual([
			{ name: 'd', tolerance: 1 / 16, kind: 'drop', from: 1, to: { bend: 2 }, surface: 'centre' },
			{ name: 'e', tolerance: 1 / 8, kind: 'drop', from: 1, to: { straight: 3 }, surface: 'across' },
			{ name: 'a', tolerance: 0.5, kind: 'angle', between: [1, 3] },
			{ name: 's', tolerance: 1 / 16, kind: 'span', from: { end: 'start' }, to: { bend: 2 } },
			{ name: 'o', tolerance: 1 / 16, kind: 'out', plane: [1, 2], to: { straight: 3 } },
			{ name: 'w', tolerance: 1 / 16, kind: 'width', from: 1, to: { straight: 3 }, surface: 'inside' },
			{ name: 'c', tolerance: 1 / 16, kind: 'width', from: 1, to: { straight: 3 }, surface: 'center' },
			{ name: 'l', tolerance: 1 / 8, kind: 'overall', axis: 'z' },
			// Source: FIA Appendix J 2009, art. 253, 8.3.3: minor over major diameter at least 0.9.
			{ name: 'r', tolerance: 0.1, kind: 'ovality', bend: 1 },
		]);
	});
});
