import type { NameOf, NumberOf, ValueRight } from '../../job/facts/index.ts';
import { rangeWords } from '../range.ts';
import { FIELD_WORDS } from '../tooling-fields.ts';
import { unitsFaultBrief } from '../units.ts';
import { mostFigure } from './figure.ts';

/** In a job file, where a text stands in quotes, or typed at a question. */
export type WrittenWhere = 'file' | 'typed';

export function valueRightWords(right: ValueRight, where: WrittenWhere): string {
	const inFile = where === 'file';
	switch (right.code) {
		case 'length': {
			const { range, units, why } = right;
			const [number, text] = units === 'in' ? ['inches, as 9.375', '9 3/8'] : ['mm, as 238', '9 3/8 in'];
			const as = `${number} or ${inFile ? `"${text}"` : text}`;
			return `a length${rangeWords(range)} in ${as}${why === undefined ? '' : ` (${unitsFaultBrief(why)})`}`;
		}
		case 'number': {
			const range = rangeWords(right.range);
			return `${numberWords(right.of)}${range && `,${range}`}${inFile ? '; a number without quotes' : ''}`;
		}
		case 'ordinal':
			return `the number of a ${right.of}, ${right.most === null ? 'from 1' : `1 to ${right.most}`}`;
		case 'count':
			return `how many of this tube are wanted, a whole number from 1 to ${right.most}`;
		case 'yes-or-no':
			return 'whether a bend may be worked back: true or false, without quotes';
		case 'name':
			return `${NAMES[right.of]}, a text${inFile ? ' in quotes' : ''} of at most ${right.most} characters on one line`;
		case 'notes':
			return `a text in quotes of at most ${right.most} characters, with \\n for the end of a line and no other control character`;
		case 'units':
			return '"in" or "mm"';
		case 'format':
			return `"${right.format}", the format that this program reads`;
		case 'material':
			return `one of ${right.keys.join(', ')}, or { "name", "yield", "modulus" } as the certificate of the tube has them`;
		case 'wall-at-most':
			return `a wall of at most half the outside diameter, ${mostFigure(right.most)}`;
		case 'some-tolerance':
			return 'some room under or over the angle: not both 0';
		case 'less-than-both-halves':
			return `less than half of both diameters together, ${mostFigure(right.most)}: further off the tubes do not touch`;
		case 'object':
			return `an object { … } with ${right.keys.join(', ')}`;
		case 'unknown-key':
			return `nothing here: no such key; known here: ${right.known.join(', ')}`;
		case 'above-first':
			return 'what the faults above ask for, then check again';
	}
}

const NAMES: Readonly<Record<NameOf, string>> = {
	part: 'a name for the part',
	bender: "the bender's name",
	die: "the die's name",
	'further-die': "a die's name",
	check: 'a name, unlike those of the other checks',
	material: "the material's name",
	heat: 'the heat, lot or certificate number',
};

const NUMBERS: Readonly<Record<Extract<NumberOf, string>, string>> = {
	risk: 'the part of bends that may come out over',
	'bend-angle': 'an angle in degrees',
	rotation: 'a rotation in degrees',
	'angle-tolerance': 'a tolerance in degrees',
	'ratio-tolerance': 'a tolerance of the ratio',
	'joint-angle': 'the angle between the center lines in degrees',
	'joint-turn': 'where round this tube the joint lies, in degrees',
};

const STRENGTHS = { yield: 'yield strength', modulus: 'elastic modulus' } as const;

function numberWords(of: NumberOf): string {
	if (typeof of === 'string') return NUMBERS[of];
	if ('strength' in of) return `the ${STRENGTHS[of.strength]} in ${of.in}`;
	return `the ${FIELD_WORDS[of.tooling].says}${of.degrees ? ' in degrees' : ''}`;
}
