import type { Check } from '../../tube/job.ts';

export type CheckKind = Check['kind'];

/** One of the things that a check has to be told: what it is called, and what it may be on a tube of so many bends. */
export interface CheckPart {
	label: string;
	choices(bends: number): readonly { label: string; value: unknown }[];
}

const count = (most: number) => Array.from({ length: most }, (_, at) => at + 1);

const straights = (bends: number) =>
	count(bends + 1).map((straight) => ({ label: `straight ${straight}`, value: straight }));
const bendNumbers = (bends: number) => count(bends).map((bend) => ({ label: `bend ${bend}`, value: bend }));

const corners = (bends: number) => [
	{ label: 'the start end', value: { end: 'start' } },
	...count(bends).map((bend) => ({ label: `the corner of bend ${bend}`, value: { bend } })),
	{ label: 'the far end', value: { end: 'far' } },
];

const dropPlaces = (bends: number) => [
	...count(bends).map((bend) => ({ label: `the outermost of bend ${bend}`, value: { bend } })),
	...count(bends + 1).map((straight) => ({ label: `the start of straight ${straight}`, value: { straight } })),
];

const SURFACES = [
	{ label: 'center line', value: 'centre' },
	{ label: 'over the tube, from an edge on the face away from the bend', value: 'across' },
];

const WIDTHS = [
	{ label: 'over the outsides', value: 'outside' },
	{ label: 'between the insides', value: 'inside' },
	{ label: 'center to center', value: 'center' },
];

const AXES = [
	{ label: 'x: along straight 1', value: 'x' },
	{ label: "y: toward bend 1's inside", value: 'y' },
	{ label: 'z: square to the plane of bend 1', value: 'z' },
];

/** What each kind of check has to be told, in the order in which it is asked. */
export const CHECK_PARTS: Readonly<Record<CheckKind, readonly CheckPart[]>> = {
	drop: [
		{ label: 'From the line of which straight', choices: straights },
		{ label: 'To where', choices: dropPlaces },
		{ label: 'Measured to', choices: () => SURFACES },
	],
	angle: [
		{ label: 'Between which straight', choices: straights },
		{ label: 'and which', choices: straights },
	],
	span: [
		{ label: 'From where', choices: corners },
		{ label: 'To where', choices: corners },
	],
	out: [
		{ label: 'Out of the plane of which straight', choices: straights },
		{ label: 'and which', choices: straights },
		{ label: 'How far the start of which straight lies', choices: straights },
	],
	width: [
		{ label: 'Between which straight', choices: straights },
		{ label: 'and which', choices: straights },
		{ label: 'Measured', choices: () => WIDTHS },
	],
	overall: [{ label: 'Along which way', choices: () => AXES }],
	ovality: [{ label: 'In the middle of which bend', choices: bendNumbers }],
};

export const CHECK_KINDS: readonly { label: string; value: CheckKind }[] = [
	{ label: 'a drop: how far a bend or straight stands from the line of a straight', value: 'drop' },
	{ label: 'an angle between two straights', value: 'angle' },
	{ label: 'a span from corner to corner, or to an end', value: 'span' },
	{ label: 'how far a straight lies out of the plane of two others', value: 'out' },
	{ label: 'the width between two parallel straights', value: 'width' },
	{ label: 'the size over all, outside to outside', value: 'overall' },
	{ label: 'ovality in the middle of a bend', value: 'ovality' },
];

/** The check as its file has it, from all its parts; `more` is its name and tolerance. */
export function checkJson(kind: CheckKind, values: readonly unknown[], more: object): object {
	const [first, second, third] = values;
	switch (kind) {
		case 'drop':
			return { ...more, drop: { from: first, to: second, ...(third === 'across' ? { surface: third } : {}) } };
		case 'angle':
			return { ...more, angle: { between: [first, second] } };
		case 'span':
			return { ...more, span: { from: first, to: second } };
		case 'out':
			return { ...more, out: { plane: [first, second], to: { straight: third } } };
		case 'width':
			return { ...more, width: { between: [first, second], ...(third === 'center' ? {} : { surface: third }) } };
		case 'overall':
			return { ...more, overall: { axis: first } };
		case 'ovality':
			return { ...more, ovality: { bend: first } };
	}
}
