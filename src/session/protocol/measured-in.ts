import type { Quantity } from '../../units/parse.ts';
import type { CheckKind, EvidenceKind, ReadingKind } from './kinds.ts';

/** What kind of number a reading is. */
export type MeasuredIn = 'angle' | 'length' | 'ratio';

/** What a reading of that kind is measured in; a check's by its own kind. */
export function measuredIn(of: ReadingKind, check?: CheckKind): MeasuredIn {
	if (check === 'angle') return 'angle';
	if (check === 'ovality') return 'ratio';
	return of === 'check' || of === 'mark' || of === 'length' ? 'length' : 'angle';
}

/** What else can be measured on the tube, in the order in which it is offered, by what that is measured in. */
export const EVIDENCE_MEASURE: Readonly<Record<EvidenceKind, MeasuredIn>> = {
	farEndToMark: 'length',
	leg: 'length',
	mark: 'length',
	rotation: 'angle',
	angle: 'angle',
};
export const EVIDENCE_KINDS = Object.keys(EVIDENCE_MEASURE) as EvidenceKind[];

/** How a number of that measure is written by a person. */
export const QUANTITY_OF: Readonly<Record<MeasuredIn, Quantity>> = {
	angle: 'angle',
	length: 'length',
	ratio: 'number',
};
