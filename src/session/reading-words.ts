import type { Job } from '../tube/job.ts';
import { checkUnit } from './number-kinds.ts';
import type { EvidenceKind, ReadingKind } from './protocol.ts';

/** What each kind of reading is, in the words of the bench. */
export const KINDS: Readonly<Record<ReadingKind, string>> = {
	loaded: 'dial under load',
	released: 'dial after release',
	pointer: 'dial with the tube snug',
	angle: 'angle',
	mark: 'mark from the start end',
	rotation: 'rotation',
	length: 'length',
	check: 'check',
};

/** What else was measured on the tube, of a bend. */
export const EVIDENCE_OF: Readonly<Record<EvidenceKind, (bend: number) => string>> = {
	angle: (bend) => `angle of bend ${bend}, measured again`,
	farEndToMark: (bend) => `far end to the mark of bend ${bend}`,
	leg: (bend) => `straight before bend ${bend}`,
	mark: (bend) => `mark of bend ${bend}, from the start end`,
	rotation: (bend) => `plane of bend ${bend} to the one before`,
};

/** What stands behind a reading's number; `name` is the check's. */
export function readingUnit({ units, checks }: Job, of: ReadingKind, name?: string): string {
	switch (of) {
		case 'mark':
		case 'length':
			return ` ${units}`;
		case 'check': {
			const check = checks.find((each) => each.name === name);
			return check ? checkUnit(check.kind, units) : '';
		}
		default:
			return ' degrees';
	}
}
