import { materialKeys, materialRow } from '../../springback/materials.ts';
import { type Draft, type Place, unitsOf } from './draft.ts';
import { put, withPart } from './put.ts';
import { type Asked, choice, NONE, OWN, question } from './question.ts';

/** A material with what is known of it, as its source has it. */
function materialLabel(key: string): string {
	const { yield: strength, in: unit, source } = materialRow(key)!;
	return `${key}: ${strength} ${unit}, ${source}`;
}

const stress = (draft: Draft) => (unitsOf(draft) === 'in' ? 'ksi' : 'MPa');

/** What the part is, and the tube that it is made of. */
export const TUBE_QUESTIONS = {
	name: {
		title: 'The job',
		field: 'name',
		asks: () => question('What the part is called', 'text'),
		takesText: (draft, text) => put(draft, 'name', text, 'units'),
	},
	units: {
		title: 'The tube',
		field: 'units',
		asks: () =>
			choice('Lengths on the drawing are in', [
				{ label: 'inches', value: 'in' },
				{ label: 'millimeters', value: 'mm' },
			]),
		takesText: (draft, text) => put(draft, 'units', text, 'material'),
	},
	material: {
		title: 'The tube',
		field: 'tube.material',
		groups: ['material'],
		asks: () =>
			choice(
				'Material of the tube',
				[
					...materialKeys.map((key) => ({ label: materialLabel(key), value: key })),
					{ label: 'another: ask the certificate for its strength', value: OWN },
				],
				{ help: 'The strength is the least that the standard asks for. A certificate says more: then take another.' },
			),
		takesText(draft, text) {
			if (text === OWN) return withPart(draft, { material: {} }, 'materialName');
			return put(draft, 'tube.material', text, 'od');
		},
	},
	materialName: {
		title: 'The tube',
		groups: ['material'],
		asks: () => question('What the material is called', 'text'),
		takesText: (draft, text) => withPart(draft, { material: { name: text } }, 'yield'),
	},
	yield: {
		title: 'The tube',
		groups: ['material'],
		asks: (draft) =>
			question(`Its yield strength, ${stress(draft)}`, 'number', { help: 'As the certificate of the tube has it.' }),
		takesNumber: (draft, value) =>
			withPart(draft, { material: { ...draft.part.material, yield: value as number } }, 'modulus'),
	},
	modulus: {
		title: 'The tube',
		groups: ['material'],
		asks: (draft) =>
			question(`Its elastic modulus, ${stress(draft)}`, 'number', {
				help: 'Steel has about 29000 ksi or 200000 MPa, aluminum 10000 ksi or 69000 MPa, titanium 15000 ksi or 105000 MPa.',
			}),
		takesNumber: (draft, value) => put(draft, 'tube.material', { ...draft.part.material, modulus: value }, 'od'),
	},
	od: {
		title: 'The tube',
		field: 'tube.od',
		asks: () => question('Outside diameter', 'length'),
		takesNumber: (draft, value) => put(draft, 'tube.od', value, 'wall'),
	},
	wall: {
		title: 'The tube',
		field: 'tube.wall',
		asks: () => question('Wall', 'length'),
		takesNumber: (draft, value) => put(draft, 'tube.wall', value, 'stock'),
	},
	stock: {
		title: 'The tube',
		field: 'tube.stock',
		asks: () =>
			question('Length of the piece in hand', 'length', {
				usual: { label: 'not known', value: '' },
				help: 'With it the program says before the first cut whether the piece is long enough.',
			}),
		takesNumber: (draft, value, { dies }) => put(draft, 'tube.stock', value, dies.length > 0 ? 'die' : 'bender'),
	},
	notes: {
		title: 'The job',
		field: 'notes',
		asks: () => question('Anything worth remembering', 'text', { usual: NONE }),
		takesText: (draft, text) => put(draft, 'notes', text || undefined, 'overview'),
	},
} satisfies Partial<Record<Place, Asked>>;
