import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import type { Quantity } from '../units/parse.ts';
import { FIELD_WORDS } from '../words/tooling-fields.ts';
import type { OptionSpec } from './command.ts';
import { optionName } from './quantity.ts';

const VALUES: Readonly<Record<Quantity, string>> = { length: 'LENGTH', angle: 'ANGLE', number: 'RATIO' };

/** Of `pullbook bender`, one option a figure of the tooling. Lengths are read as in a job file, `6` or `"1 1/2"` or `"38 mm"`. */
export const FIGURE_OPTIONS: Readonly<Record<string, OptionSpec>> = Object.fromEntries(
	FIELD_NAMES.map((field): [string, OptionSpec] => [
		optionName(field),
		{ value: VALUES[TOOLING_FIELDS[field].kind], says: FIELD_WORDS[field].says },
	]),
);
