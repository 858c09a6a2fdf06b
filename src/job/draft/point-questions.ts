import type { Draft, Place, Value } from './draft.ts';
import { withPart } from './put.ts';
import { type Asked, choice, question, type Taken } from './question.ts';
import { addPoint } from './shape-parts.ts';

const POINTS = 'The first point is the finished start end, the last one the finished far end.';

/** The shape by its sharp corners. */
export const POINT_QUESTIONS = {
	flat: {
		title: 'The shape',
		groups: ['points'],
		asks: () =>
			choice('The tube is', [
				{ label: 'flat: two numbers for each point', value: 'flat' },
				{ label: 'not flat: three numbers for each point', value: 'deep' },
			]),
		takesText: (draft, text) => ({
			draft: { ...draft, flat: text === 'flat', item: 0, put: 'add', part: {}, at: 'x' },
			place: null,
		}),
	},
	x: {
		title: 'The shape',
		groups: ['points'],
		asks: (draft) => question(`${pointName(draft)}: along, x`, 'length', { help: POINTS }),
		takesNumber: (draft, value) => withPart(draft, { point: [value as Value] }, 'y'),
	},
	y: {
		title: 'The shape',
		groups: ['points'],
		asks: (draft) => question(`${pointName(draft)}: across, y`, 'length'),
		takesNumber: (draft, value) => pointTaken(draft, value as Value),
	},
	z: {
		title: 'The shape',
		groups: ['points'],
		asks: (draft) => question(`${pointName(draft)}: up, z`, 'length'),
		takesNumber: (draft, value) => pointTaken(draft, value as Value),
	},
	morePoints: {
		title: 'The shape',
		groups: ['points'],
		asks: () =>
			choice('And then', [
				{ label: 'a further point', value: 'more' },
				{ label: 'no more: the last point was the finished far end', value: 'last' },
			]),
		takesText: (draft, text) => ({
			draft: {
				...draft,
				item: draft.file.shape?.points?.length ?? 0,
				put: 'add',
				part: {},
				at: text === 'more' ? 'x' : 'trimStart',
			},
			place: text === 'more' ? null : 'shape.points',
		}),
	},
} satisfies Partial<Record<Place, Asked>>;

function pointName({ item }: Draft): string {
	return item === 0 ? 'The start end' : `Point ${item + 1}`;
}

function pointTaken(draft: Draft, value: Value): Taken {
	const point = [...(draft.part.point ?? []), value];
	if (point.length < (draft.flat ? 2 : 3)) return withPart(draft, { point }, 'z');
	const next = addPoint(draft, point);
	const count = next.file.shape?.points?.length ?? 0;
	if (draft.put !== 'add') return { draft: { ...next, at: 'overview' }, place: 'shape.points' };
	return count < 3
		? { draft: { ...next, item: count, at: 'x' }, place: null }
		: { draft: { ...next, at: 'morePoints' }, place: 'shape.points' };
}
