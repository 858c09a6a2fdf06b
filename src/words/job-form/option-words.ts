import type { OptionFact, PlainOption } from '../../job/facts/question.ts';
import type { CheckKind } from '../../session/protocol/kinds.ts';
import { formatLength } from '../../units/format.ts';
import { cornerWords, WIDTHS } from '../checks.ts';

const PLAIN_OPTIONS: Readonly<Record<PlainOption, string>> = {
	none: 'none',
	'not-known': 'not known',
	'leave-out': 'leave it out',
	'as-usual': 'as usual',
	'shop-bender': 'shop',
	'by-radius': 'by its radius',
	inches: 'inches',
	millimeters: 'millimeters',
	'other-material': 'another: ask the certificate for its strength',
	'other-die': 'another: by its radius',
	'other-die-named': 'another: by its name and radius',
	'bend-by-bend': 'bend by bend; an offset by rise and run too',
	'by-corners': 'by the sharp corners of the center line',
	'last-straight': 'no more bends: the last straight',
	flat: 'flat: two numbers for each point',
	'not-flat': 'not flat: three numbers for each point',
	'no-more-points': 'no more points',
	'same-way': 'same way',
	'same-way-as-before': 'the same way as the bend before',
	'opposite-way': 'the opposite way',
	'other-plane': 'in another plane: turned by some degrees',
	'square-end': 'cut square',
	'coped-end': 'coped: cut to fit round another tube',
	'square-joint': '90°, square',
	'on-inside': "on bend 1's inside",
	'may-open': 'yes, where nothing else makes the tube fit',
	'never-open': 'no: the rule book or the customer forbids it',
};

const CHECK_OPTIONS: Readonly<Record<CheckKind, string>> = {
	drop: 'a drop: how far a bend or straight stands from the line of a straight',
	angle: 'an angle between two straights',
	span: 'a span from corner to corner, or to an end',
	out: 'how far a straight lies out of the plane of two others',
	width: 'the width between two parallel straights',
	overall: 'the size over all, outside to outside',
	ovality: 'ovality in the middle of a bend',
};

const SURFACE_OPTIONS = {
	center: 'center line',
	across: 'over the tube, from an edge on the face away from the bend',
} as const;

/** Without the letters that they have in the file: those of a drawing by points are others. */
const AXIS_OPTIONS = {
	x: 'along straight 1',
	y: "toward bend 1's inside",
	z: 'square to the plane of bend 1',
} as const;

const PIECE_OPTIONS = {
	bend: (bend: number) => `bend ${bend}`,
	corners: (bend: number) => `an offset, bends ${bend} and ${bend + 1}: by rise and run between the corners`,
	tangents: () => 'the same by rise and run over all, from tangent to tangent',
	slope: () => 'the same by rise and angle',
} as const;

/** An answer that the job form offers. */
export function optionWords(is: OptionFact): string {
	switch (is.code) {
		case 'piece':
			return PIECE_OPTIONS[is.piece](is.bend);
		case 'material':
			return `${is.key}: ${is.yield} ${is.in}, ${is.source}`;
		case 'die':
			return `${is.bender}, ${keptDieWords(is)}`;
		case 'further-die':
			return keptDieWords(is);
		case 'jobs-die':
			return `the job's die${is.name === undefined ? '' : `: ${is.name}`}`;
		case 'named':
			return is.name;
		case 'check':
			return CHECK_OPTIONS[is.kind];
		case 'straight':
			return `straight ${is.number}`;
		case 'bend':
			return `bend ${is.number}`;
		case 'corner':
			return cornerWords(is.of);
		case 'outermost':
			return `the outermost of bend ${is.bend}`;
		case 'start-of':
			return `the start of straight ${is.straight}`;
		case 'drop-surface':
			return SURFACE_OPTIONS[is.of];
		case 'width':
			return WIDTHS[is.of];
		case 'axis':
			return AXIS_OPTIONS[is.axis];
		default:
			return PLAIN_OPTIONS[is.code];
	}
}

const keptDieWords = ({
	die,
	clr,
	units,
}: Extract<OptionFact, { code: 'further-die' }> | Extract<OptionFact, { code: 'die' }>) =>
	`die ${die}${clr === null ? '' : ` (radius ${formatLength(clr, units)})`}`;

/** The same beside its key, where that saves a line. */
export const optionBrief = (is: OptionFact): string | undefined =>
	is.code === 'no-more-points' ? 'no more' : undefined;
