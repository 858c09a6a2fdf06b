import type { FieldPlace } from '../../job/facts/question.ts';
import type { FieldName } from '../../tube/tooling-fields.ts';
import { capital } from '../../units/format.ts';
import { FIELD_WORDS } from '../tooling-fields.ts';

/** A field that most jobs leave out: what it is called, what holds without it, and a sentence more where one helps. */
interface PlaceWords {
	label: string;
	without: string;
	help?: string;
}

type OtherPlace = Exclude<FieldPlace, `tooling.${string}`>;

const OTHERS: Readonly<Record<OtherPlace, PlaceWords>> = {
	'shape.radius': {
		label: 'Center-line radius that the drawing shows',
		without: "the die's",
		help: 'With it the straights say where the sharp corners lie. The corners hold, whatever radius the die makes.',
	},
	'tolerance.under': { label: 'How far under the angle wanted a bend may be', without: '0.5°' },
	'tolerance.over': { label: 'How far over the angle wanted a bend may be', without: '0.5°' },
	'tolerance.length': { label: 'How far a length may be off', without: '1/16 in or 1.5 mm' },
	'tolerance.rotation': { label: 'How far a rotation may be off', without: '1°' },
	'tolerance.shape': {
		label: "How far a corner or the far end may be off the drawing's place",
		without: 'four times what a length may be off',
	},
	'tolerance.direction': { label: "How far the last straight may point off the drawing's", without: '1°' },
	quantity: { label: 'How many of this tube you want', without: '1' },
	risk: { label: 'Part of bends that may come out over', without: '0.02', help: '0.02 is one bend in fifty.' },
};

export function placeWords(place: FieldPlace): PlaceWords {
	if (!isOfTooling(place)) return OTHERS[place];
	const { says, ...rest } = FIELD_WORDS[place.slice('tooling.'.length) as FieldName];
	return { label: capital(says), ...rest };
}

const isOfTooling = (place: FieldPlace): place is Exclude<FieldPlace, OtherPlace> => place.startsWith('tooling.');
