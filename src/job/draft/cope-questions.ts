import type { EndName } from '../../tube/job.ts';
import type { CopeJson, Draft, Place, Value } from './draft.ts';
import { withKey } from './put.ts';
import { type Asked, choice, NONE, question, type Taken } from './question.ts';

/** What each finished end meets. An end that is coped is square to the other tube until its angle is answered, so that it can be drawn. */
export const COPE_QUESTIONS = {
	endFit: {
		title: 'The ends',
		groups: ['end'],
		asks: (draft) =>
			choice(`The ${endOf(draft)} end is`, [
				{ label: 'cut square', value: 'square' },
				{ label: 'coped: cut to fit round another tube', value: 'cope' },
			]),
		takesText(draft, text) {
			if (text === 'square') return { ...withCope(draft, undefined, 'overview'), place: null };
			return { draft: { ...draft, at: 'copeOd' }, place: null };
		},
	},
	copeOd: {
		title: 'The ends',
		groups: ['end'],
		asks: (draft) => question(`Outside diameter of the tube that the ${endOf(draft)} end meets`, 'length'),
		takesNumber: (draft, value) =>
			withCope(draft, { angle: 90, ...copeIn(draft), od: value as Value }, 'copeAngle', 'od'),
	},
	copeAngle: {
		title: 'The ends',
		groups: ['end'],
		asks: () =>
			question('Angle between the two center lines', 'angle', {
				usual: { label: '90°, square', value: '90' },
				help: 'Below 90 the other tube leans back over this one on the side of the joint line, which is asked last.',
			}),
		takesNumber: (draft, value) => withCope(draft, { ...copeIn(draft), angle: value as number }, 'copeOffset', 'angle'),
	},
	copeOffset: {
		title: 'The ends',
		groups: ['end'],
		asks: () =>
			question('How far the two center lines pass each other', 'length', {
				usual: NONE,
				help: 'Looking out of the end with the joint line up: to the right positive, to the left negative.',
			}),
		takesNumber: (draft, value) => withCope(draft, withKey(copeIn(draft), 'offset', value), 'copeTurn', 'offset'),
	},
	copeTurn: {
		title: 'The ends',
		groups: ['end'],
		asks: () =>
			question("Where round the tube the joint line lies, from bend 1's inside", 'angle', {
				usual: { label: "on bend 1's inside", value: '' },
				help: 'Looking along the tube from the start end to the far end: clockwise positive, counterclockwise negative.',
			}),
		takesNumber: (draft, value) => withCope(draft, withKey(copeIn(draft), 'turn', value), 'overview', 'turn'),
	},
} satisfies Partial<Record<Place, Asked>>;

const endOf = ({ part }: Draft): EndName => part.end ?? 'start';

/** What the end in hand meets, as far as it is known. */
export function copeIn(draft: Draft): CopeJson | undefined {
	return draft.file.ends?.[endOf(draft)]?.cope;
}

/** The draft with that end so, and the next question open. */
function withCope(draft: Draft, cope: CopeJson | undefined, at: Place, key = ''): Taken & { draft: Draft } {
	const end = endOf(draft);
	const ends = withKey(draft.file.ends, end, cope && { cope });
	const file = withKey(draft.file, 'ends', Object.keys(ends).length === 0 ? undefined : ends);
	return { draft: { ...draft, file, at }, place: `ends.${end}.cope.${key}` };
}
