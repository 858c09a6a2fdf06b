import type { CorrectionInput } from '../../../src/fit/correct.ts';
import type { Check } from '../../../src/tube/job.ts';

/** The `chord` of a case as a check: from the start end to the far end. */
export const END_TO_END: Check = {
	name: 'end to end',
	kind: 'span',
	from: { end: 'start' },
	to: { end: 'far' },
	tolerance: 1,
};

/** One case of `test/fixtures/fit-scipy.json`, as `fit-scipy.py` beside it writes them. */
export interface Reference {
	made: number;
	room: number;
	chord: { design: number; tolerance: number } | null;
	design: { straights: number[]; angles: number[]; rotations: number[] };
	shape: Reference['design'];
	radius: number;
	goal: CorrectionInput['goal'];
	cost: number;
	active: number;
}
