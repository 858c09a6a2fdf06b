import type { ToMeasure } from '../../session/protocol/kinds.ts';
import { foreignName } from '../foreign.ts';

/** What the pages say on which something is measured once more. */

/** Which bend, on a page that lists them. */
export const WHICH_BEND = {
	label: "The bend's number",
	empty: "Write the bend's number and press Enter; / goes back.",
} as const;

export const MEASURE_AGAIN = 'Measure a bend again';

/** What was measured, wherever it was not asked for. */
export const MEASURED = {
	label: 'What does it measure?',
	finder: 'What does the angle finder show?',
	empty: 'Write what it measures and press Enter; / goes back.',
} as const;

/** What to do again, as a choice of the decision. */
export function againLabel({ kind, bend, name }: ToMeasure): string {
	switch (kind) {
		case 'angle':
			return `measure bend ${bend} again`;
		case 'check':
			return `read the ${foreignName(name ?? '')} again`;
		case 'mark':
			return `measure the mark of bend ${bend}`;
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
				label: MEASURED.finder,
				how: `Hold the angle finder on both straights, clear of the bend. ${ANEW}`,
			};
		case 'check':
			return {
				title: `Read the ${foreignName(name ?? '')} again`,
				label: MEASURED.label,
				how: `Lay it on again, where the check says. ${ANEW}`,
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
