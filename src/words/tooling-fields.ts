import type { FieldName } from '../tube/tooling-fields.ts';

interface FieldWords {
	/** What it is, to stand after `the`. */
	says: string;
	/** What holds where a job leaves it out. */
	without: string;
	/** A sentence more, where one helps. */
	help?: string;
}

const TEST_PIECE = 'A test piece tells it.';

/** Each figure of the tooling, as the job form, the pages of benders, the faults of a job file and the help of commands name it. */
export const FIELD_WORDS: Readonly<Record<FieldName, FieldWords>> = {
	clr: { says: 'center-line radius of the die', without: 'as the die has it' },
	growth: {
		says: "radius of a finished bend over the die's",
		without: 'as the die has it, else what is to be expected',
		help: TEST_PIECE,
	},
	stretch: {
		says: 'part by which an arc comes out longer',
		without: 'as the die has it, else 0',
		help: `0.004 is 0.4 %. ${TEST_PIECE}`,
	},
	markOffset: {
		says: 'how far past the index line a bend begins',
		without: 'as the die has it, else 0',
		help: TEST_PIECE,
	},
	clamp: { says: 'straight tube that the clamp needs', without: 'as the die has it, else none' },
	follow: { says: 'straight tube needed behind the last bend', without: 'as the die has it, else none' },
	maxAngle: { says: 'largest dial angle', without: 'as the bender has it, else 180' },
	dialStep: { says: 'smallest division of the dial', without: 'as the bender has it, else 0.5' },
	tape: { says: 'division of the tape', without: 'as the bender has it, else 1/16 in or 1 mm' },
	floor: {
		says: "height of the die's plane above the floor",
		without: 'as the bender has it, else not checked',
	},
};
