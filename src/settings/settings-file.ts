import type { KeptRecord } from '../tube/kept-tooling.ts';

export interface KeptDie extends KeptRecord {
	name: string;
}

/** Lessons that do not count any more. Their sessions stay as they are. */
export interface Forgotten {
	bender: string;
	/** Null: with every die. */
	die: string | null;
	/** ISO time. */
	before: string;
}

export interface Preferences {
	/** The folder that the home screen takes jobs from. */
	jobs?: string;
	/** How the screen shows lengths; left out: in the job's own unit. */
	lengths?: 'fraction' | 'decimal' | 'mm';
	/** The large mark always from the start end. */
	fromStart?: boolean;
	/** The check list at each seat; left out: shown. */
	checklist?: boolean;
	/** A bell for a doubt, for numbers that changed, for an error; left out: rung. */
	bell?: boolean;
}

/** A bender as the file has it; its machine: what holds with every die. */
export interface BenderInFile {
	name: string;
	machine?: KeptRecord;
	dies: KeptDie[];
}

/**
 * What settings.json holds. Lists, not objects by name, so that a die called `6` keeps its place and one called `__proto__` is a name like any
 * other. Keys of a newer version are carried along untouched.
 */
export interface SettingsFile {
	benders: BenderInFile[];
	forgotten?: Forgotten[];
	preferences: Preferences;
}
