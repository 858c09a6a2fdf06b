import { bendsIn, type Draft, type Part, type Place, unitsOf, type Value } from './draft.ts';
import { put, withKey, withPart } from './put.ts';
import { type Asked, choice, OWN, question, type Shop, type Taken } from './question.ts';
import { addBend, addOffset } from './shape-parts.ts';
import { lengthOf } from './value.ts';

/** The shape bend by bend, an offset as two of them. */
export const BEND_QUESTIONS = {
	shape: {
		title: 'The shape',
		groups: ['bends', 'points'],
		asks: () =>
			choice('How the shape is given', [
				{ label: 'bend by bend; an offset by rise and run too', value: 'bends' },
				{ label: 'by the sharp corners of the center line', value: 'points' },
			]),
		takesText(draft, text) {
			const points = text === 'points';
			const file = withKey(draft.file, 'shape', points ? { points: [] } : { bends: [] });
			return { draft: { ...draft, file, item: 0, put: 'add', part: {}, at: points ? 'flat' : 'piece' }, place: null };
		},
	},
	piece: {
		title: 'The shape',
		groups: ['bends'],
		asks: (draft) => {
			const next = bendsIn(draft) + 1;
			return choice(
				next === 1 ? 'What comes first' : 'What comes then',
				[
					{ label: `bend ${next}`, value: 'bend' },
					{ label: `an offset, bends ${next} and ${next + 1}: by rise and run between the corners`, value: 'corners' },
					{ label: 'the same by rise and run over all, from tangent to tangent', value: 'tangents' },
					{ label: 'the same by rise and angle', value: 'slope' },
					...(next === 1 ? [] : [{ label: 'no more bends: the last straight', value: 'last' }]),
				],
				{ usual: { label: `bend ${next}`, value: 'bend' } },
			);
		},
		takesText(draft, text) {
			if (text === 'last') return { draft: { ...draft, part: {}, at: 'last' }, place: null };
			const fresh: Draft = { ...draft, item: bendsIn(draft), put: 'add', part: {} };
			return withPart(fresh, { piece: text as Part['piece'] & string }, 'straight');
		},
	},
	straight: {
		title: 'The shape',
		groups: ['bends'],
		asks: ({ item }) =>
			question(`Straight before bend ${item + 1}, tangent to tangent`, 'length', {
				help: item === 0 ? 'From the finished start end to where the bend begins.' : '',
			}),
		takesNumber(draft, value) {
			const straight = value as Value;
			const offset = draft.part.piece !== 'bend';
			return withPart(draft, { straight }, offset ? 'rise' : 'angle', `shape.bends[${draft.item}].straight`);
		},
	},
	angle: {
		title: 'The shape',
		groups: ['bends'],
		asks: ({ item, part }) =>
			question(part.piece === 'slope' ? 'Angle of both bends' : `Angle of bend ${item + 1}`, 'angle'),
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
		title: 'The shape',
		groups: ['bends'],
		asks: () =>
			question('Rise: how far the tube is led over', 'length', {
				help: 'Square to the tube, center line to center line.',
			}),
		takesNumber: (draft, value) =>
			withPart(
				draft,
				{ rise: lengthOf(value as Value, unitsOf(draft)) },
				draft.part.piece === 'slope' ? 'angle' : 'run',
			),
	},
	run: {
		title: 'The shape',
		groups: ['bends'],
		asks: ({ part }) =>
			question('Run: within what length along the tube', 'length', {
				help:
					part.piece === 'tangents'
						? 'From where the first bend begins to where the second one ends.'
						: 'From sharp corner to sharp corner.',
			}),
		takesNumber: (draft, value, shop) => offsetTaken(draft, { run: lengthOf(value as Value, unitsOf(draft)) }, shop),
	},
	turn: {
		title: 'The shape',
		groups: ['bends'],
		asks: ({ item }) =>
			choice(
				`Bend ${item + 1} goes`,
				[
					{ label: 'the same way as the bend before', value: 'same' },
					{ label: 'the opposite way', value: 'opposite' },
					{ label: 'in another plane: turned by some degrees', value: OWN },
				],
				{ usual: { label: 'same way', value: 'same' } },
			),
		takesText(draft, text, shop) {
			if (text === OWN) return withPart(draft, {}, 'turnBy');
			return bent(draft, text === 'same' ? 0 : 180, shop);
		},
	},
	turnBy: {
		title: 'The shape',
		groups: ['bends'],
		asks: ({ item }) =>
			question(`How far bend ${item + 1} is turned from the bend before`, 'angle', {
				help: 'Looking along the tube from the start end to the far end: clockwise positive, counterclockwise negative.',
			}),
		takesNumber: (draft, value, shop) => bent(draft, value as number, shop),
	},
	last: {
		title: 'The shape',
		field: 'shape.last',
		groups: ['bends'],
		asks: () =>
			question('Straight after the last bend', 'length', { help: 'From where it ends to the finished far end.' }),
		takesNumber: (draft, value) => put(draft, 'shape.last', value, 'trimStart'),
	},
} satisfies Partial<Record<Place, Asked>>;

/** The bend in hand is whole. */
function bent(draft: Draft, rotation: number, shop: Shop): Taken {
	if (draft.part.piece !== 'bend') {
		const made = addOffset(draft, rotation, shop);
		return 'fault' in made ? made : { draft: { ...made, at: 'piece' }, place: 'shape.bends' };
	}
	const next = addBend(draft, rotation);
	return { draft: { ...next, at: draft.put === 'add' ? 'piece' : 'overview' }, place: `shape.bends[${draft.item}]` };
}

/** The offset is known but for the way that it goes, which for the first bend is no question. */
function offsetTaken(draft: Draft, part: Part, shop: Shop): Taken {
	const next = { ...draft, part: { ...draft.part, ...part } };
	// What cannot be led over is said here, not two questions later.
	const made = addOffset(next, 0, shop);
	if ('fault' in made) return made;
	return draft.item === 0 ? bent(next, 0, shop) : { draft: { ...next, at: 'turn' }, place: null };
}
