import type { EndName } from '../../tube/job.ts';
import type { CopeJson, Draft, FileValue, QuestionPlace } from './draft.ts';
import { withKey } from './put.ts';
import { choiceQuestion, type DraftTaken, type FormQuestion, NONE, option, question } from './question.ts';

/** What each finished end meets. An end that is coped is square to the other tube until its angle is answered, so that it can be drawn. */
export const COPE_QUESTIONS = {
	endFit: {
		groups: ['end'],
		asks: (draft) =>
			choiceQuestion({ code: 'endFit', end: copedEnd(draft) }, [
				option('square-end', 'square'),
				option('coped-end', 'cope'),
			]),
		takesText(draft, text) {
			if (text === 'square') return { ...withCope(draft, undefined, 'overview'), place: null };
			return { draft: { ...draft, at: 'copeOd' }, place: null };
		},
	},
	copeOd: {
		groups: ['end'],
		asks: (draft) => question({ code: 'copeOd', end: copedEnd(draft) }, 'length'),
		takesNumber: (draft, value) =>
			withCope(draft, { angle: 90, ...copeIn(draft), od: value as FileValue }, 'copeAngle', 'od'),
	},
	copeAngle: {
		groups: ['end'],
		asks: () => question({ code: 'copeAngle' }, 'angle', option('square-joint', '90')),
		takesNumber: (draft, value) => withCope(draft, { ...copeIn(draft), angle: value as number }, 'copeOffset', 'angle'),
	},
	copeOffset: {
		groups: ['end'],
		asks: () => question({ code: 'copeOffset' }, 'length', NONE),
		takesNumber: (draft, value) => withCope(draft, withKey(copeIn(draft), 'offset', value), 'copeTurn', 'offset'),
	},
	copeTurn: {
		groups: ['end'],
		asks: () => question({ code: 'copeTurn' }, 'angle', option('on-inside')),
		takesNumber: (draft, value) => withCope(draft, withKey(copeIn(draft), 'turn', value), 'overview', 'turn'),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;

const copedEnd = ({ part }: Draft): EndName => part.end ?? 'start';

/** What the end in hand meets, as far as it is known. */
export function copeIn(draft: Draft): CopeJson | undefined {
	return draft.file.ends?.[copedEnd(draft)]?.cope;
}

/** The draft with that end so, and the next question open. */
function withCope(
	draft: Draft,
	cope: CopeJson | undefined,
	at: QuestionPlace,
	key = '',
): DraftTaken & { draft: Draft } {
	const end = copedEnd(draft);
	const ends = withKey(draft.file.ends, end, cope && { cope });
	const file = withKey(draft.file, 'ends', Object.keys(ends).length === 0 ? undefined : ends);
	return { draft: { ...draft, file, at }, place: `ends.${end}.cope.${key}` };
}
