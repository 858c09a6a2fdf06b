import type { Expected } from '../log/events.ts';

/** Least over greatest diameter that a rotary-draw bend usually keeps; common practice, no source. */
const USUAL_OVALITY = 0.95;
const USUAL_SD = 0.03;
/** Two caliper readings of a rounded tube. */
export const OVALITY_SD = 0.01;

/** Ovality is not computed from anything the program knows: only the usual range is expected. */
export function expectOvality(): Expected {
	return { value: USUAL_OVALITY, sd: USUAL_SD };
}
