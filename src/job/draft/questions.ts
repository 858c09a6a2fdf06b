import { materialKeys } from '../../springback/materials.ts';
import { TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { capital } from '../../units/format.ts';
import type { Quantity } from '../../units/parse.ts';
import type { ToolingLookup } from '../tooling.ts';
import { CHECK_KINDS, CHECK_PARTS } from './check-questions.ts';
import { bendsIn, type Draft, type Place, unitsOf } from './draft.ts';
import { fieldQuestion } from './field-questions.ts';

/** What a job may lean on: the benders and dies that are kept. */
export interface Shop {
	lookup: ToolingLookup;
	dies: readonly { bender: string; die: string; says: string }[];
}

/** One of several answers; `value` is what `answer` is given. */
export interface Option {
	label: string;
	value: string;
}

/** What is asked now. */
export interface Question {
	title: string;
	label: string;
	kind: Quantity | 'text' | 'choice';
	options?: readonly Option[];
	/** What most people answer; an empty value leaves the field out. */
	usual?: Option;
	/** A sentence on what is meant. */
	help?: string;
}

/** A value in a list that stands for something to be typed. */
export const OWN = 'own';

const NONE: Option = { label: 'none', value: '' };

type Asking = (draft: Draft, shop: Shop) => Question;

function question(
	label: string,
	kind: Question['kind'],
	more: Omit<Partial<Question>, 'label' | 'kind'> = {},
): Question {
	return { title: '', label, kind, ...more };
}

function choice(label: string, options: readonly Option[], more: Partial<Question> = {}): Question {
	return question(label, 'choice', { options, ...more });
}

const stress = (draft: Draft) => (unitsOf(draft) === 'in' ? 'ksi' : 'MPa');

/** Every question but that of a field on its own, by its place. */
const QUESTIONS: Readonly<Record<Exclude<Place, 'overview' | 'field'>, Asking>> = {
	name: () => question('What the part is called', 'text'),
	units: () =>
		choice('Lengths on the drawing are in', [
			{ label: 'inches', value: 'in' },
			{ label: 'millimetres', value: 'mm' },
		]),
	material: () =>
		choice('Material of the tube', [
			...materialKeys.map((key) => ({ label: key, value: key })),
			{ label: 'another: by its strength and modulus', value: OWN },
		]),
	materialName: () => question('What the material is called', 'text'),
	yield: (draft) => question(`Its yield strength, ${stress(draft)}`, 'number'),
	modulus: (draft) =>
		question(`Its elastic modulus, ${stress(draft)}`, 'number', {
			help: 'Steel has about 29000 ksi or 200000 MPa, aluminium 10000 ksi or 69000 MPa.',
		}),
	od: () => question('Outside diameter', 'length'),
	wall: () => question('Wall', 'length'),
	stock: () =>
		question('Length of the piece in hand', 'length', {
			usual: { label: 'not known', value: '' },
			help: 'With it the program says before the first cut whether the piece is long enough.',
		}),
	die: (_, { dies }) =>
		choice('Bender and die', [
			...dies.map(({ bender, die, says }) => ({
				label: `${bender}, die ${die}${says === '' ? '' : ` (${says})`}`,
				value: JSON.stringify([bender, die]),
			})),
			{ label: 'another: by its radius', value: OWN },
		]),
	bender: () =>
		question('What the bender is called', 'text', {
			usual: { label: 'shop', value: '' },
			help: 'Springback is learned under the names of bender and die. Enter alone: shop.',
		}),
	dieName: () =>
		question('What the die is called', 'text', {
			usual: { label: 'by its radius', value: '' },
			help: 'Enter alone: named by its radius and the diameter.',
		}),
	clr: () => question(capital(TOOLING_FIELDS.clr.says), 'length'),
	clamp: () => question(capital(TOOLING_FIELDS.clamp.says), 'length', { usual: NONE, help: 'From the mark back.' }),
	follow: () =>
		question(capital(TOOLING_FIELDS.follow.says), 'length', {
			usual: NONE,
			help: 'What must still lie behind a bend while it is pulled.',
		}),
	shape: () =>
		choice('How the shape is given', [
			{ label: 'bend by bend; an offset by rise and run too', value: 'bends' },
			{ label: 'by the sharp corners of the centre line', value: 'points' },
		]),
	piece: (draft) => {
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
	straight: ({ item }) =>
		question(`Straight before bend ${item + 1}, tangent to tangent`, 'length', {
			help: item === 0 ? 'From the finished start end to where the bend begins.' : '',
		}),
	angle: ({ item, part }) =>
		question(part.piece === 'slope' ? 'Angle of both bends' : `Angle of bend ${item + 1}`, 'angle'),
	rise: () =>
		question('Rise: how far the tube is led over', 'length', {
			help: 'Square to the tube, centre line to centre line.',
		}),
	run: ({ part }) =>
		question('Run: within what length along the tube', 'length', {
			help:
				part.piece === 'tangents'
					? 'From where the first bend begins to where the second one ends.'
					: 'From sharp corner to sharp corner.',
		}),
	turn: ({ item }) =>
		choice(
			`Bend ${item + 1} goes`,
			[
				{ label: 'the same way as the bend before', value: 'same' },
				{ label: 'the opposite way', value: 'opposite' },
				{ label: 'in another plane: turned by some degrees', value: OWN },
			],
			{ usual: { label: 'same way', value: 'same' } },
		),
	turnBy: ({ item }) =>
		question(`How far bend ${item + 1} is turned from the bend before`, 'angle', {
			help: 'Looking along the tube from the start end to the far end: clockwise positive, counterclockwise negative.',
		}),
	last: () =>
		question('Straight after the last bend', 'length', { help: 'From where it ends to the finished far end.' }),
	flat: () =>
		choice('The tube is', [
			{ label: 'flat: two numbers for each point', value: 'flat' },
			{ label: 'not flat: three numbers for each point', value: 'deep' },
		]),
	x: (draft) => question(`${pointName(draft)}: along, x`, 'length', { help: POINTS }),
	y: (draft) => question(`${pointName(draft)}: across, y`, 'length'),
	z: (draft) => question(`${pointName(draft)}: up, z`, 'length'),
	morePoints: () =>
		choice('And then', [
			{ label: 'a further point', value: 'more' },
			{ label: 'no more: the last point was the finished far end', value: 'last' },
		]),
	trimStart: () => question('Trim at the start end, cut off after bending', 'length', { usual: NONE }),
	trimEnd: () => question('Trim at the far end', 'length', { usual: NONE }),
	checkKind: () => choice('What is to be checked', CHECK_KINDS),
	checkPart: (draft) => {
		const { kind, values } = draft.part.check!;
		const part = CHECK_PARTS[kind][values.length]!;
		const options = part.choices(bendsIn(draft)).map(({ label, value }) => ({ label, value: JSON.stringify(value) }));
		return choice(part.label, options);
	},
	checkTolerance: ({ part }) => {
		const kind = part.check!.kind;
		return question(
			kind === 'angle' ? 'How far it may be off, degrees' : 'How far it may be off',
			kind === 'angle' ? 'angle' : kind === 'ovality' ? 'number' : 'length',
			{ usual: { label: 'as usual', value: '' } },
		);
	},
	checkName: ({ part, item }) =>
		question('What the check is called', 'text', {
			usual: { label: `${part.check!.kind} ${item + 1}`, value: '' },
			help: `Enter alone: ${part.check!.kind} ${item + 1}.`,
		}),
	notes: () => question('Anything worth remembering', 'text', { usual: NONE }),
};

const POINTS = 'The first point is the finished start end, the last one the finished far end.';

function pointName({ item }: Draft): string {
	return item === 0 ? 'The start end' : `Point ${item + 1}`;
}

const TITLES: readonly (readonly [title: string, places: readonly Place[]])[] = [
	['The tube', ['units', 'material', 'materialName', 'yield', 'modulus', 'od', 'wall', 'stock']],
	['Bender and die', ['die', 'bender', 'dieName', 'clr', 'clamp', 'follow']],
	['The shape', ['shape', 'piece', 'straight', 'angle', 'turn', 'turnBy', 'rise', 'run', 'last', 'flat']],
	['The shape', ['x', 'y', 'z', 'morePoints']],
	['The ends', ['trimStart', 'trimEnd']],
	['A check', ['checkKind', 'checkPart', 'checkTolerance', 'checkName']],
];

/** What is asked of a draft now. `at` is not the overview, where nothing is asked. */
export function questionOf(draft: Draft, shop: Shop): Question {
	const { at } = draft;
	if (at === 'overview') throw new RangeError('Nothing is asked in the overview.');
	const title = TITLES.find(([, places]) => places.includes(at))?.[0] ?? 'The job';
	if (at === 'field') return { ...fieldQuestion(draft.field), title };
	return { ...QUESTIONS[at](draft, shop), title };
}
