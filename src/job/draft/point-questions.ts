import type { QuestionFact } from '../facts/question.ts';
import type { Draft, FileValue, QuestionPlace } from './draft.ts';
import { withPart } from './put.ts';
import { choiceQuestion, type DraftTaken, type FormQuestion, option, question } from './question.ts';
import { addPoint } from './shape-parts.ts';

/** With so many points there is a tube: each further one may be left out. */
const LEAST_POINTS = 3;

const isFurther = ({ item, put }: Draft): boolean => put === 'add' && item >= LEAST_POINTS;

/** The shape by its sharp corners. */
export const POINT_QUESTIONS = {
	flat: {
		groups: ['points'],
		asks: () => choiceQuestion({ code: 'flat' }, [option('flat', 'flat'), option('not-flat', 'deep')]),
		takesText: (draft, text) => ({
			draft: { ...draft, flat: text === 'flat', item: 0, put: 'add', part: {}, at: 'x' },
			place: null,
		}),
	},
	x: {
		groups: ['points'],
		asks: (draft) => question(pointFact('x', draft), 'length', isFurther(draft) ? option('no-more-points') : undefined),
		takesNumber: (draft, value) =>
			value === undefined
				? { draft: { ...draft, part: {}, at: 'trimStart' }, place: 'shape.points' }
				: withPart(draft, { point: [value] }, 'y'),
	},
	y: {
		groups: ['points'],
		asks: (draft) => question(pointFact('y', draft), 'length'),
		takesNumber: (draft, value) => pointTaken(draft, value as FileValue),
	},
	z: {
		groups: ['points'],
		asks: (draft) => question(pointFact('z', draft), 'length'),
		takesNumber: (draft, value) => pointTaken(draft, value as FileValue),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;

function pointFact(code: 'x' | 'y' | 'z', draft: Draft): QuestionFact {
	return { code, point: draft.item + 1, further: isFurther(draft) };
}

function pointTaken(draft: Draft, value: FileValue): DraftTaken {
	const point = [...(draft.part.point ?? []), value];
	if (point.length < (draft.flat ? 2 : 3)) return withPart(draft, { point }, 'z');
	const next = addPoint(draft, point);
	const count = next.file.shape?.points?.length ?? 0;
	if (draft.put !== 'add') return { draft: { ...next, at: 'overview' }, place: 'shape.points' };
	return { draft: { ...next, item: count, at: 'x' }, place: count < LEAST_POINTS ? null : 'shape.points' };
}
