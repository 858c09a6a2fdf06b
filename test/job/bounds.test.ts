import { expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { BOUNDS } from '../../src/tube/bounds.ts';
import { lengthsIn, type Range } from '../../src/units/range.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { toldFaults } from '../helpers/disk/told-faults.ts';

/** Every number of a job file: its place, and what it may be. */
const LENGTHS: Readonly<Record<string, Range>> = {
	'tube.od': BOUNDS.od,
	'tube.wall': BOUNDS.wall,
	'tube.stock': BOUNDS.stock,
	'tooling.clr': BOUNDS.radius,
	'tooling.clamp': BOUNDS.holding,
	'tooling.follow': BOUNDS.holding,
	'tooling.markOffset': BOUNDS.markOffset,
	'tooling.tape': BOUNDS.tape,
	'tooling.floor': BOUNDS.floor,
	'shape.last': BOUNDS.straight,
	'shape.bends.0.straight': BOUNDS.straight,
	'trim.start': BOUNDS.trim,
	'trim.end': BOUNDS.trim,
	'tolerance.length': BOUNDS.lengthTolerance,
	'tolerance.shape': BOUNDS.shapeTolerance,
	'ends.far.cope.od': BOUNDS.od,
	'checks.0.tolerance': BOUNDS.lengthTolerance,
};
const OTHERS: Readonly<Record<string, Range>> = {
	'shape.bends.0.angle': BOUNDS.bendAngle,
	'tooling.maxAngle': BOUNDS.maxAngle,
	'tooling.dialStep': BOUNDS.dialStep,
	'tooling.growth': BOUNDS.growth,
	'tolerance.under': BOUNDS.band,
	'tolerance.over': BOUNDS.band,
	'tolerance.rotation': BOUNDS.angleTolerance,
	'tolerance.direction': BOUNDS.angleTolerance,
	'checks.1.tolerance': BOUNDS.angleTolerance,
	'checks.2.tolerance': BOUNDS.ratioTolerance,
	'ends.far.cope.angle': BOUNDS.jointAngle,
	risk: BOUNDS.risk,
};

const CHECKS = [
	{ name: 'span', span: { from: { bend: 1 }, to: { bend: 2 } } },
	{ name: 'angle', angle: { between: [1, 2] } },
	{ name: 'round', ovality: { bend: 1 } },
];
const whole = (units: string) => ({
	...plainJobFile(),
	units,
	ends: { far: { cope: { od: units === 'in' ? 1.5 : 40, angle: 90 } } },
	checks: CHECKS,
	...(units === 'mm' && { tube: { material: '1020-dom', od: 40, wall: 2 }, tooling: { clr: 150 } }),
});

/** The faults at that place when this stands there. */
function faultsAt(place: string, value: number, units: string): string[] {
	const read = readJob(change(whole(units), place, value));
	const at = place.replace(/\.(\d+)/g, '[$1]');
	return toldFaults(read)
		.filter((fault) => fault.at === at)
		.map(({ right }) => right);
}

const inUnits = (range: Range, units: string) => lengthsIn(range, units === 'in' ? 'in' : 'mm');
const places = (['in', 'mm'] as const).flatMap((units) => [
	...Object.entries(LENGTHS).map(([place, range]) => [place, units, inUnits(range, units)] as const),
	...Object.entries(OTHERS).map(([place, range]) => [place, units, range] as const),
]);

it.each(places)('%s in %s is within what there is, and the fault names both bounds', (place, units, range) => {
	const { least, most, below } = range;
	const outside = [1e308, -1e308, ...(most === undefined ? [below!] : [most * 1.001 + 1e-12])];
	if (least! > 0) outside.push(1e-320, 1e-9, least! * 0.999);
	else outside.push(least! - 1);
	for (const value of outside) {
		const [right] = faultsAt(place, value, units);
		expect(right, `${value}`).toContain(String(least));
		expect(right).toContain(String(most ?? below));
	}
	for (const value of [least!, most].filter((each) => each !== undefined)) {
		const ruled = faultsAt(place, value, units).filter((right) => right.includes(`from ${least}`));
		expect(ruled).toEqual([]);
	}
});

it('a material is a metal', () => {
	for (const [units, low, high] of [
		['in', { yield: 0.9, modulus: 99 }, { yield: 501, modulus: 100_001 }],
		['mm', { yield: 6.9, modulus: 699 }, { yield: 3501, modulus: 700_001 }],
	] as const)
		for (const wrong of [low, high, { yield: 1e-320, modulus: 1e-320 }]) {
			const read = readJob(change(whole(units), 'tube.material', { name: 'any', ...wrong }));
			expect('faults' in read && read.faults.map(({ at }) => at)).toEqual([
				'tube.material.yield',
				'tube.material.modulus',
			]);
		}
});

it('some room is left for the angle: both sides together', () => {
	const read = readJob({ ...whole('in'), tolerance: { under: 0, over: 0 } });
	expect('faults' in read && read.faults.map(({ at }) => at)).toEqual(['tolerance']);
	expect(readJob({ ...whole('in'), tolerance: { under: 0.01, over: 0 } })).toHaveProperty('job');
});

it('a tube that would spring back by more than half is none that is bent', () => {
	// By mechanics: k = M R / (E I), thin wall: about 2.55 yield R / (modulus OD). Half at 0.5 x 1.5 x 29000 / (2.55 x 60) = 142 in.
	const at = (clr: number) => {
		const read = readJob(change(whole('in'), 'tooling.clr', clr));
		return toldFaults(read).map(({ right }) => right);
	};
	expect(at(120)).toEqual([]);
	expect(at(160)).toEqual([expect.stringMatching(/^a radius of at most 1[2-5]\d/)]);
});

it('names fit a line, notes have lines', () => {
	const wrong = ['x'.repeat(81), 'a\nb', 'a\u001b[2J', 'a\u009b', 'a\u202eb', '\u2066', 'a\u2028b', 'tab\there'];
	for (const place of ['name', 'tooling.bender', 'tooling.die', 'tube.heat', 'checks.0.name'])
		for (const name of wrong) {
			const read = readJob(change(whole('in'), place, name));
			const at = place.replace(/\.(\d+)/g, '[$1]');
			expect('faults' in read && read.faults.map((fault) => fault.at), `${place} ${name}`).toEqual([at]);
		}
	expect(readJob(change(whole('in'), 'name', 'é'.repeat(80)))).toHaveProperty('job');
	expect(readJob({ ...whole('in'), notes: 'One.\n\tTwo.\r\nThree.' })).toHaveProperty('job');
	expect(readJob({ ...whole('in'), notes: 'x'.repeat(4000) })).toHaveProperty('job');
	for (const notes of ['x'.repeat(4001), 'a\u001b]0;x\u0007', 'a\u202eb']) {
		expect(readJob({ ...whole('in'), notes })).toMatchObject({ faults: [{ at: 'notes' }] });
	}
});

it('bends are at most 200', () => {
	const bends = (count: number) => Array.from({ length: count }, () => ({ straight: 9, angle: 1, rotation: 0 }));
	const job = (count: number) => readJob({ ...plainJobFile(), shape: { bends: bends(count), last: 9 } });
	expect(job(200)).toHaveProperty('job');
	expect(toldFaults(job(201))).toMatchObject([{ at: 'shape.bends', found: 'a list of 201' }]);
	expect(job(0)).toHaveProperty('faults');
});
