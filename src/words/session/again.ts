import type { ToMeasure } from '../../session/protocol/kinds.ts';
import { foreignName } from '../foreign.ts';

/** What the pages say on which something is measured once more. */

/** Which bend, on a page that lists them. */
export const WHICH_BEND = {
	label: "The bend's number",
	bend: (bend: number): string => `bend ${bend}`,
	empty: "Write the bend's number and press Enter; / goes back.",
} as const;

export const MEASURE_AGAIN = {
	title: 'Measure a bend again',
	empty: 'Write what it reads and press Enter; / goes back.',
} as const;

/** What to do again, as a choice of the decision. */
export function againLabel({ kind, bend, name }: ToMeasure): string {
	switch (kind) {
		case 'angle':
			return `measure bend ${bend} again`;
		case 'check':
			return `read the ${foreignName(name ?? '')} again`;
		case 'mark':
			return `measure where the mark of bend ${bend} is`;
		case 'rotation':
			return `read back how bend ${bend} lies`;
	}
}

const ANEW = 'Do not look at what it read before.';

/** The page on which it is done. */
export function againWords({ kind, bend, name }: ToMeasure): { title: string; label: string; how: string } {
	switch (kind) {
		case 'angle':
			return {
				title: `Measure bend ${bend} again`,
				label: 'What does the angle finder show?',
				how: `Hold the finder on both legs, clear of the bend. ${ANEW}`,
			};
		case 'check':
			return {
				title: `Read the ${foreignName(name ?? '')} again`,
				label: 'What does it measure?',
				how: `Lay it on anew, where the check says. ${ANEW}`,
			};
		case 'mark':
			return {
				title: `The mark of bend ${bend}`,
				label: 'Where is it, from the start end?',
				how: `Measure from the start end to where the bend begins. ${ANEW}`,
			};
		case 'rotation':
			return {
				title: `The turn of bend ${bend}`,
				label: 'How does it lie to the bend before?',
				how: `Read how the plane of bend ${bend} lies to that of bend ${(bend ?? 1) - 1}. ${ANEW}`,
			};
	}
}
