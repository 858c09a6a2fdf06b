import { materialKeys, materialRow } from '../../springback/materials.ts';
import { type Draft, type QuestionPlace, unitsOf } from './draft.ts';
import { put, withPart } from './put.ts';
import { choiceQuestion, type FormQuestion, NONE, type Option, OWN, option, question } from './question.ts';

/** A material with what is known of it, as its source has it. */
function materialOption(key: string): Option {
	const { yield: strength, in: unit, source } = materialRow(key)!;
	return { is: { code: 'material', key, yield: strength, in: unit, source }, value: key };
}

const stress = (draft: Draft) => (unitsOf(draft) === 'in' ? 'ksi' : 'MPa');

/** What the part is, and the tube that it is made of. */
export const TUBE_QUESTIONS = {
	name: {
		field: 'name',
		asks: () => question({ code: 'name' }, 'text'),
		takesText: (draft, text) => put(draft, 'name', text, 'units'),
	},
	units: {
		field: 'units',
		asks: () => choiceQuestion({ code: 'units' }, [option('inches', 'in'), option('millimeters', 'mm')]),
		takesText: (draft, text) => put(draft, 'units', text, 'material'),
	},
	material: {
		field: 'tube.material',
		groups: ['material'],
		asks: () =>
			choiceQuestion({ code: 'material' }, [...materialKeys.map(materialOption), option('other-material', OWN)]),
		takesText(draft, text) {
			if (text === OWN) return withPart(draft, { material: {} }, 'materialName');
			return put(draft, 'tube.material', text, 'od');
		},
	},
	materialName: {
		groups: ['material'],
		asks: () => question({ code: 'materialName' }, 'text'),
		takesText: (draft, text) => withPart(draft, { material: { name: text } }, 'yield'),
	},
	yield: {
		groups: ['material'],
		asks: (draft) => question({ code: 'yield', in: stress(draft) }, 'number'),
		takesNumber: (draft, value) =>
			withPart(draft, { material: { ...draft.part.material, yield: value as number } }, 'modulus'),
	},
	modulus: {
		groups: ['material'],
		asks: (draft) => question({ code: 'modulus', in: stress(draft) }, 'number'),
		takesNumber: (draft, value) => put(draft, 'tube.material', { ...draft.part.material, modulus: value }, 'od'),
	},
	od: {
		field: 'tube.od',
		asks: () => question({ code: 'od' }, 'length'),
		takesNumber: (draft, value) => put(draft, 'tube.od', value, 'wall'),
	},
	wall: {
		field: 'tube.wall',
		asks: () => question({ code: 'wall' }, 'length'),
		takesNumber: (draft, value) => put(draft, 'tube.wall', value, 'stock'),
	},
	stock: {
		field: 'tube.stock',
		asks: () => question({ code: 'stock' }, 'length', option('not-known')),
		takesNumber: (draft, value, { dies }) => put(draft, 'tube.stock', value, dies.length > 0 ? 'die' : 'bender'),
	},
	notes: {
		field: 'notes',
		asks: () => question({ code: 'notes' }, 'text', NONE),
		takesText: (draft, text) => put(draft, 'notes', text || undefined, 'overview'),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
