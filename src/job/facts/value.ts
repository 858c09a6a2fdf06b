import type { FieldName } from '../../tube/tooling-fields.ts';
import type { Range } from '../../units/range.ts';
import type { Units } from '../../units/units.ts';
import type { UnitsFault } from '../../units/units-error.ts';

export type ValueFound =
	/** `kept`: it comes from the bender and die as kept, not from the file. */
	| { code: 'value'; value: unknown; kept?: true }
	| { code: 'nothing' }
	| { code: 'list-of'; length: number }
	/** So many faults there are besides those that are told. */
	| { code: 'more-faults'; count: number };

/** What a number of a job file is, but for those of the tooling. */
export type NumberOf =
	| 'risk'
	| 'bend-angle'
	| 'rotation'
	| 'angle-tolerance'
	| 'ratio-tolerance'
	| 'joint-angle'
	| 'joint-turn'
	| { strength: 'yield' | 'modulus'; in: 'ksi' | 'MPa' }
	| { tooling: FieldName; degrees: boolean };

/** What a name in a job file is of. */
export type NameOf = 'part' | 'bender' | 'die' | 'further-die' | 'check' | 'material' | 'heat';

export type ValueRight =
	/** `why`: what is wrong with the one that was written. */
	| { code: 'length'; range: Range; units: Units; why?: UnitsFault }
	| { code: 'number'; of: NumberOf; range: Range }
	/** The number of one among several, from 1 to `most`; null: nobody knows of how many. */
	| { code: 'ordinal'; of: 'straight' | 'bend'; most: number | null }
	| { code: 'count'; of: 'tubes'; most: number }
	| { code: 'yes-or-no'; of: 'may-open' }
	| { code: 'name'; of: NameOf; most: number }
	| { code: 'notes'; most: number }
	| { code: 'units' }
	| { code: 'format'; format: string }
	| { code: 'material'; keys: readonly string[] }
	| { code: 'wall-at-most'; most: number }
	| { code: 'some-tolerance' }
	| { code: 'less-than-both-halves'; most: number }
	| { code: 'object'; keys: readonly string[] }
	| { code: 'unknown-key'; known: readonly string[] }
	| { code: 'above-first' };
