import type { Bend, Job, Tooling } from '../../../src/tube/job.ts';

/** What a test changes of the plain job; tooling, trim and tolerance may be given in part. */
export type JobParts = Partial<Omit<Job, 'tooling' | 'trim' | 'tolerance'>> & {
	tooling?: Partial<Tooling>;
	trim?: Partial<Job['trim']>;
	tolerance?: Partial<Job['tolerance']>;
};

/** One 90 between two legs of 20 in, on a 6 in die: nothing about it calls for a warning. */
export function plainJob({ tooling, trim, tolerance, ...parts }: JobParts = {}): Job {
	return {
		name: 'Fender rail',
		units: 'in',
		tube: { material: { name: '1020-dom', yield: 60, modulus: 29_000 }, od: 1.5, wall: 0.095, stock: null },
		shape: { kind: 'bends', bends: [{ straight: 20, angle: 90, rotation: 0 }], last: 20 },
		risk: 0.02,
		mayOpen: true,
		quantity: 1,
		checks: [],
		notes: '',
		...parts,
		tooling: {
			bender: 'shop',
			die: '6 in',
			clr: 6,
			growth: null,
			stretch: 0,
			clamp: 0,
			follow: 0,
			markOffset: 0,
			maxAngle: 180,
			dialStep: 0.5,
			tape: 1 / 16,
			floor: null,
			...tooling,
		},
		trim: { start: 0, end: 0, ...trim },
		tolerance: { under: 0.5, over: 0.5, length: 1 / 16, rotation: 1, shape: 1 / 4, direction: 1, ...tolerance },
	};
}

/** A shape by bends: `[straight, angle, rotation]` each, then the last straight. */
export function byBends(list: readonly (readonly [number, number, number])[], last: number): Job['shape'] {
	const bends: Bend[] = list.map(([straight, angle, rotation]) => ({ straight, angle, rotation }));
	return { kind: 'bends', bends, last };
}
