/** Sentences of the chalk-out table. */

import type { ChalkPlane, ChalkPoint } from '../tube/chalk.ts';
import type { Job } from '../tube/job.ts';
import { bendsFromTo } from './bend-name.ts';
import { type BendRadius, radiiWords } from './dies.ts';
import { foreignName } from './foreign.ts';
import { type Ruled, tapeValue, unitName } from './lengths.ts';

/** Over the table. */
export const chalkHeading = ({ name, units }: Job): string =>
	`${foreignName(name)}: center line (lengths in ${unitName(units)})`;
export const CHALK_COLUMNS = ['point', 'along', 'off the line', 'from A', 'from B'] as const;

export function chalkWords(bends: readonly BendRadius[], job: Ruled): string {
	const radius = radiiWords(bends, (each) => tapeValue(each, job));
	return (
		'Draw the base line from A to B. Measure each point along the line from A, then square off it. ' +
		'No square? Strike an arc from A and one from B: the point is where they cross. ' +
		`Draw each bend round its center: the radius is ${radius}.`
	);
}

/** What a plane's table is of, and how long its base line is. */
export function planeWords({ bends: [first, last], base }: ChalkPlane, planes: number, job: Ruled): string {
	const bends = bendsFromTo(first, last);
	const which = planes === 1 ? 'The tube lies in one plane.' : `The plane of ${bends}.`;
	const from = first === 1 ? 'the start end' : `the end of bend ${first - 1}`;
	return `${which} The base line is ${tapeValue(base, job)} long. A is ${from}; the line runs along straight ${first}. Off the line: to the side that bend ${first} bends to; below 0 to the other.`;
}

export function chalkPointWords({ what, bend }: ChalkPoint): string {
	switch (what) {
		case 'start':
			return 'straight begins';
		case 'begins':
			return `bend ${bend} begins`;
		case 'corner':
			return `bend ${bend} corner`;
		case 'middle':
			return `bend ${bend} middle`;
		case 'ends':
			return `bend ${bend} ends`;
		case 'center':
			return `bend ${bend} center`;
		case 'end':
			return 'straight ends';
	}
}
