import type { FormFound, FormRight } from '../../job/facts/index.ts';
import { trimmed } from '../../units/format.ts';
import { askedWords } from '../job-form/questions.ts';
import { unitsFaultWords } from '../units.ts';
import { figure } from './figure.ts';

export function formFoundWords(found: FormFound): string {
	const rise = `a rise of ${figure(found.rise)}`;
	if (found.code === 'rise-at') return `${rise} at ${figure(found.angle)}°`;
	return found.run === undefined ? rise : `${rise} in a run of ${figure(found.run)}`;
}

export function formRightWords(right: FormRight): string {
	switch (right.code) {
		case 'answer':
			return askedWords(right.to).label;
		case 'choice':
			return 'one of the numbers in the list';
		case 'offset':
			return right.by === 'run' ? 'a rise above 0 and a longer run' : 'a rise above 0, an angle above 0 and below 180';
		case 'longer-offset': {
			const { by, radius, short, units } = right;
			const longer = by === 'run' ? 'run' : 'rise, or another angle';
			return `a longer ${longer}: at a radius of ${trimmed(radius, 3)} ${units} the two bends want ${trimmed(short, 3)} ${units} more between their corners`;
		}
		case 'number-as-written':
			return unitsFaultWords(right.why, right.wanted);
	}
}
