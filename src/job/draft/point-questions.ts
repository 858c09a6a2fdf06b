import type { Draft, Place, Value } from './draft.ts';
import { withPart } from './put.ts';
import { type Asked, choice, question, type Taken } from './question.ts';
import { addPoint } from './shape-parts.ts';

const POINTS = 'The first point is the finished start end, the last one the finished far end.';
const FURTHER = 'Was the last point the finished far end? Then press +.';

/** With so many points there is a tube: each further one may be left out. */
const LEAST = 3;

const isFurther = ({ item, put }: Draft): boolean => put === 'add' && item >= LEAST;

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
		asks: (draft) =>
			isFurther(draft)
				? question(`A further point, ${draft.item + 1}: along, x`, 'length', {
						help: FURTHER,
						usual: { label: 'no more points', value: '' },
					})
				: question(`${pointName(draft)}: along, x`, 'length', draft.item === 0 ? { help: POINTS } : {}),
		takesNumber: (draft, value) =>
			value === undefined
				? { draft: { ...draft, part: {}, at: 'trimStart' }, place: 'shape.points' }
				: withPart(draft, { point: [value] }, 'y'),
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
	return { draft: { ...next, item: count, at: 'x' }, place: count < LEAST ? null : 'shape.points' };
}
