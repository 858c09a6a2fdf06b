import type { KeptBender } from '../../settings/settings.ts';
import type { KeptDie } from '../../settings/settings-file.ts';
import type { KeptRecord } from '../../tube/kept-tooling.ts';
import type { FieldName } from '../../tube/tooling-fields.ts';
import type { Units } from '../../units/units.ts';
import type { PieceForm } from './piece-form.ts';

/** Which page of the benders is open. */
export type BenchPage =
	| { bench: 'list' }
	| { bench: 'bender'; bender: string }
	| { bench: 'die'; bender: string; die: string }
	| { bench: 'field'; bender: string; die: string | null; field: FieldName }
	| { bench: 'newBender' }
	| { bench: 'newDie'; bender: string }
	| { bench: 'units'; bender: string; die: string }
	| { bench: 'radius'; bender: string; die: string; units: Units }
	| { bench: 'forget'; bender: string; die: string | null }
	| { bench: 'piece'; piece: PieceForm }
	/** `from`: the page that asked for it. */
	| { bench: 'more' | 'help'; from: BenchPage };

export function benderOf(benders: readonly KeptBender[], name: string): KeptBender | undefined {
	return benders.find((bender) => bender.name === name);
}

function keptDieOf(benders: readonly KeptBender[], bender: string, name: string): KeptDie | undefined {
	return benderOf(benders, bender)?.dies.find((die) => die.name === name);
}

/** What is kept of the die, or without one of the machine itself. */
export function keptRecordOf(benders: readonly KeptBender[], bender: string, die: string | null): KeptRecord {
	const known = benderOf(benders, bender);
	const record = die === null ? known?.machine : keptDieOf(benders, bender, die);
	return record ?? { units: known?.machine?.units ?? known?.dies[0]?.units ?? 'in', fields: {} };
}
