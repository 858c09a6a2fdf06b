import type { FieldName } from '../../tube/tooling-fields.ts';
import { TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { formatLength, formatQuantity } from '../../units/format.ts';
import type { Units } from '../../units/units.ts';
import { foreignName } from '../foreign.ts';

/** What a layout rests on besides the job file, a sentence each. */

/** Figures that came from the bender and die that are kept; null: not known there either. */
export function keptFigures(
	bender: string,
	die: string,
	figures: readonly (readonly [name: FieldName, value: number | null])[],
	units: Units,
): string {
	const told = figures.map(([name, value]) => {
		return `${name} ${value === null ? 'not known' : formatQuantity(value, TOOLING_FIELDS[name].kind, units)}`;
	});
	return `As kept for bender "${foreignName(bender)}" and die "${foreignName(die)}": ${told.join(', ')}.`;
}

/** That the drawing's corners hold, where a job meant something else before they did. `drawn`: radius that its straights are for. */
export const cornersHold = (drawn: number, units: Units): string =>
	`Changed: a job with growth and bends is read in a new way. The straights in the file are for bends of radius ${formatLength(drawn, units)}. The corners hold; straights and marks give way. It used to be the other way about.`;
