import type { CheckKind, ReadingKind } from './kinds.ts';

/** What kind of number a reading is. */
export type MeasuredIn = 'angle' | 'length' | 'ratio';

/** What a reading of that kind is measured in; a check's by its own kind. */
export function measuredIn(of: ReadingKind, check?: CheckKind): MeasuredIn {
	if (check === 'angle') return 'angle';
	if (check === 'ovality') return 'ratio';
	return of === 'check' || of === 'mark' || of === 'length' ? 'length' : 'angle';
}
