import type { CopedEnd } from '../../../tube/cope.ts';
import type { CheckKind } from '../kinds.ts';

/** What is left to be done and looked at before a finished tube leaves the bench. Lengths in the job's unit, angles in degrees. */
export type FinishFact =
	| { code: 'look-for-flats'; bend: number }
	| { code: 'bend-outside'; bend: number; made: number; target: number }
	| { code: 'check-not-read'; name: string; kind: CheckKind; design: number; tolerance: number; expected: number }
	| { code: 'check-outside' | 'check-after-cutting'; name: string; kind: CheckKind; design: number; tolerance: number }
	| ({ code: 'cope' } & CopedEnd)
	| { code: 'deburr' };
