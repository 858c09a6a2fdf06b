import {
	bendsIn,
	type Draft,
	type FileValue,
	type GivenPiece,
	type QuestionPlace,
	type Unfinished,
	unitsOf,
} from './draft.ts';
import { lengthInFile } from './file-value.ts';
import { put, withKey, withPart } from './put.ts';
import {
	choiceQuestion,
	type DraftTaken,
	type FormQuestion,
	type FormShop,
	type Option,
	OWN,
	option,
	question,
} from './question.ts';
import { addBend, addOffset } from './shape-parts.ts';

/** In the order in which they are offered. */
const PIECES: readonly GivenPiece[] = ['bend', 'corners', 'tangents', 'slope'];

/** The shape bend by bend, an offset as two of them. */
export const BEND_QUESTIONS = {
	shape: {
		groups: ['bends', 'points'],
		asks: () => choiceQuestion({ code: 'shape' }, [option('bend-by-bend', 'bends'), option('by-corners', 'points')]),
		takesText(draft, text) {
			const points = text === 'points';
			const file = withKey(draft.file, 'shape', points ? { points: [] } : { bends: [] });
			return { draft: { ...draft, file, item: 0, put: 'add', part: {}, at: points ? 'flat' : 'piece' }, place: null };
		},
	},
	piece: {
		groups: ['bends'],
		asks: (draft) => {
			const bend = bendsIn(draft) + 1;
			const pieces = PIECES.map((piece): Option => ({ is: { code: 'piece', piece, bend }, value: piece }));
			return choiceQuestion(
				{ code: 'piece', bend },
				[...pieces, ...(bend === 1 ? [] : [option('last-straight', 'last')])],
				pieces[0],
			);
		},
		takesText(draft, text) {
			if (text === 'last') return { draft: { ...draft, part: {}, at: 'last' }, place: null };
			const fresh: Draft = { ...draft, item: bendsIn(draft), put: 'add', part: {} };
			return withPart(fresh, { piece: text as Unfinished['piece'] & string }, 'straight');
		},
	},
	straight: {
		groups: ['bends'],
		asks: ({ item }) => question({ code: 'straight', bend: item + 1 }, 'length'),
		takesNumber(draft, value) {
			const straight = value as FileValue;
			const offset = draft.part.piece !== 'bend';
			return withPart(draft, { straight }, offset ? 'rise' : 'angle', `shape.bends[${draft.item}].straight`);
		},
	},
	angle: {
		groups: ['bends'],
		asks: ({ item, part }) =>
			question(part.piece === 'slope' ? { code: 'both-angles' } : { code: 'angle', bend: item + 1 }, 'angle'),
		takesNumber(draft, value, shop) {
			const angle = value as number;
			if (draft.part.piece === 'slope') return offsetTaken(draft, { angle }, shop);
			const place = `shape.bends[${draft.item}].angle`;
			if (draft.item > 0) return withPart(draft, { angle }, 'turn', place);
			const first = draft.put === 'instead' ? (draft.file.shape?.bends?.[0]?.rotation ?? 0) : 0;
			return bent({ ...draft, part: { ...draft.part, angle } }, first, shop);
		},
	},
	rise: {
		groups: ['bends'],
		asks: () => question({ code: 'rise' }, 'length'),
		takesNumber: (draft, value) =>
			withPart(
				draft,
				{ rise: lengthInFile(value as FileValue, unitsOf(draft)) },
				draft.part.piece === 'slope' ? 'angle' : 'run',
			),
	},
	run: {
		groups: ['bends'],
		asks: ({ part }) => question({ code: 'run', over: part.piece === 'tangents' ? 'tangents' : 'corners' }, 'length'),
		takesNumber: (draft, value, shop) =>
			offsetTaken(draft, { run: lengthInFile(value as FileValue, unitsOf(draft)) }, shop),
	},
	turn: {
		groups: ['bends'],
		asks: ({ item }) =>
			choiceQuestion(
				{ code: 'turn', bend: item + 1 },
				[option('same-way-as-before', 'same'), option('opposite-way', 'opposite'), option('other-plane', OWN)],
				option('same-way', 'same'),
			),
		takesText(draft, text, shop) {
			if (text === OWN) return withPart(draft, {}, 'turnBy');
			return bent(draft, text === 'same' ? 0 : 180, shop);
		},
	},
	turnBy: {
		groups: ['bends'],
		asks: ({ item }) => question({ code: 'turnBy', bend: item + 1 }, 'angle'),
		takesNumber: (draft, value, shop) => bent(draft, value as number, shop),
	},
	last: {
		field: 'shape.last',
		groups: ['bends'],
		asks: () => question({ code: 'last' }, 'length'),
		takesNumber: (draft, value) => put(draft, 'shape.last', value, 'trimStart'),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;

/** The bend in hand is whole. */
function bent(draft: Draft, rotation: number, shop: FormShop): DraftTaken {
	if (draft.part.piece !== 'bend') {
		const made = addOffset(draft, rotation, shop);
		return 'fault' in made ? made : { draft: { ...made, at: 'piece' }, place: 'shape.bends' };
	}
	const next = addBend(draft, rotation);
	return { draft: { ...next, at: draft.put === 'add' ? 'piece' : 'overview' }, place: `shape.bends[${draft.item}]` };
}

/** The offset is known but for the way that it goes, which for the first bend is no question. */
function offsetTaken(draft: Draft, part: Unfinished, shop: FormShop): DraftTaken {
	const next = { ...draft, part: { ...draft.part, ...part } };
	// What cannot be led over is said here, not two questions later.
	const made = addOffset(next, 0, shop);
	if ('fault' in made) return made;
	return draft.item === 0 ? bent(next, 0, shop) : { draft: { ...next, at: 'turn' }, place: null };
}
