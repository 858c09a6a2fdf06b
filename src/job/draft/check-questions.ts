import type { CheckKind } from '../../session/protocol/kinds.ts';
import type { Axis, CornerName, WidthSurface } from '../../tube/job.ts';
import type { CheckPart, OptionFact } from '../facts/question.ts';
import type { Option } from './question.ts';

/** One of the things that a check has to be told, and what it may be on a tube of so many bends, as the file has it. */
interface PartOfCheck {
	part: CheckPart;
	choices(bends: number): readonly CheckOption[];
}

interface CheckOption {
	is: OptionFact;
	value: unknown;
}

const upTo = (most: number) => Array.from({ length: most }, (_, at) => at + 1);

const straights = (bends: number) =>
	upTo(bends + 1).map((number): CheckOption => ({ is: { code: 'straight', number }, value: number }));
const bendNumbers = (bends: number) =>
	upTo(bends).map((number): CheckOption => ({ is: { code: 'bend', number }, value: number }));

const cornerOptions = (bends: number) => {
	const all: CornerName[] = [{ end: 'start' }, ...upTo(bends).map((bend) => ({ bend })), { end: 'far' }];
	return all.map((of): CheckOption => ({ is: { code: 'corner', of }, value: of }));
};

const dropPlaces = (bends: number): CheckOption[] => [
	...upTo(bends).map((bend): CheckOption => ({ is: { code: 'outermost', bend }, value: { bend } })),
	...upTo(bends + 1).map((straight): CheckOption => ({ is: { code: 'start-of', straight }, value: { straight } })),
];

const SURFACE_CHOICES: readonly CheckOption[] = [
	{ is: { code: 'drop-surface', of: 'center' }, value: 'centre' },
	{ is: { code: 'drop-surface', of: 'across' }, value: 'across' },
];

const WIDTH_CHOICES = (['outside', 'inside', 'center'] satisfies WidthSurface[]).map(
	(of): CheckOption => ({ is: { code: 'width', of }, value: of }),
);

const AXIS_CHOICES = (['x', 'y', 'z'] satisfies Axis[]).map(
	(axis): CheckOption => ({ is: { code: 'axis', axis }, value: axis }),
);

/** What each kind of check has to be told, in the order in which it is asked. */
export const CHECK_PARTS: Readonly<Record<CheckKind, readonly PartOfCheck[]>> = {
	drop: [
		{ part: 'drop-from', choices: straights },
		{ part: 'drop-to', choices: dropPlaces },
		{ part: 'drop-surface', choices: () => SURFACE_CHOICES },
	],
	angle: [
		{ part: 'between', choices: straights },
		{ part: 'and', choices: straights },
	],
	span: [
		{ part: 'span-from', choices: cornerOptions },
		{ part: 'span-to', choices: cornerOptions },
	],
	out: [
		{ part: 'out-of-plane', choices: straights },
		{ part: 'and', choices: straights },
		{ part: 'out-straight', choices: straights },
	],
	width: [
		{ part: 'between', choices: straights },
		{ part: 'and', choices: straights },
		{ part: 'width-surface', choices: () => WIDTH_CHOICES },
	],
	overall: [{ part: 'overall-axis', choices: () => AXIS_CHOICES }],
	ovality: [{ part: 'ovality-bend', choices: bendNumbers }],
};

/** In the order in which they are offered: that of their parts. */
export const CHECK_KINDS: readonly Option[] = (Object.keys(CHECK_PARTS) as CheckKind[]).map((kind) => ({
	is: { code: 'check', kind },
	value: kind,
}));

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
