import type { Units } from '../tube/job.ts';
import { convertLength } from '../units/units.ts';
import type { CorrectionInput } from './correction-input.ts';

/** The scales that the method was tried with: tolerances of the far end, and how dear a change is. */
export function scales(units: Units): Pick<CorrectionInput, 'tolerance' | 'dear'> {
	const mm = (length: number) => convertLength(length, 'mm', units);
	return {
		tolerance: { position: mm(0.5), direction: 0.25 },
		dear: { straight: mm(10), angle: 2, rotation: 4 },
	};
}
