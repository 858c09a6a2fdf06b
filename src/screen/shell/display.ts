import type { Lengths } from '../../words/lengths.ts';

/** What a person chooses about how things are shown; kept from one session to the next. */
export interface Display {
	/** How lengths are shown; null: in the job's own unit. */
	lengths: Lengths | null;
	/** The large mark always from the start end, also once bends are made. */
	fromStart: boolean;
	/** The check list at each seat and the page for laying out the tube. */
	checklist: boolean;
	/** A bell for a doubt, for numbers that changed, for an error. */
	bell: boolean;
}

export const USUAL_DISPLAY: Display = { lengths: null, fromStart: false, checklist: true, bell: true };

/** Where such choices are kept. */
export interface DisplayPort {
	kept(): Partial<Display>;
	/** Keeps the choices; one that cannot be kept holds for this session all the same. */
	keep(changes: Partial<Display>): void;
}
