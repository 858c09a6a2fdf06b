import type { CorrectionInput } from '../../src/fit/correct.ts';

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
