import { isObject } from '../../tube/as-json.ts';
import { FIELD_NAMES, type FieldName, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { inside } from '../fault.ts';
import type { BendJson, DiesJson, Draft, JobJson, QuestionPlace } from './draft.ts';
import { put, withKey } from './put.ts';
import { type FormQuestion, option, question } from './question.ts';

const DIES = 'tooling.dies';

/** Further dies and what stands under their names, right or not. */
export function furtherDies({ tooling }: JobJson): DiesJson {
	return isObject(tooling?.dies) ? (tooling.dies as DiesJson) : {};
}

/** What stands under a further die's name, as far as it is of a die's kind. */
export function furtherDie(file: JobJson, name: string): DiesJson[string] {
	const die = furtherDies(file)[name];
	return isObject(die) ? (die as DiesJson[string]) : {};
}

/** A figure of a further die, or its name, where what is written cannot be. */
export const FURTHER_DIE_QUESTIONS = {
	dieFigure: {
		asks: ({ part: { die, figure } }) =>
			question({ code: 'dieFigure', die: die!, figure: figure! }, TOOLING_FIELDS[figure!].kind, option('leave-out')),
		takesNumber(draft, value) {
			const { die: name, figure } = draft.part as { die: string; figure: FieldName };
			const die = withKey(furtherDie(draft.file, name), figure, value);
			const taken = put(draft, DIES, { ...furtherDies(draft.file), [name]: die }, 'overview');
			return { ...taken, place: inside(inside(DIES, name), figure) };
		},
	},
	dieCalled: {
		asks: ({ part: { die } }) => question({ code: 'dieCalled', die: die! }, 'text'),
		takesText(draft, text) {
			const name = draft.part.die!;
			const { [name]: _, ...others } = furtherDies(draft.file);
			const { shape = {}, ...file } = draft.file;
			const renamed = (bend: BendJson) => (bend.die === name ? { ...bend, die: text } : bend);
			const bends = shape.bends === undefined ? {} : { bends: shape.bends.map(renamed) };
			const next = { ...draft, file: { ...file, shape: { ...shape, ...bends } } };
			const taken = put(next, DIES, { ...others, [text]: furtherDie(draft.file, name) }, 'overview');
			return { ...taken, place: inside(DIES, text) };
		},
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;

/** The question that mends a fault at a place under `tooling.dies`; null: none of a further die's name or figures. */
export function furtherDieAt(at: string, file: JobJson): Pick<Draft, 'at' | 'part'> | null {
	for (const die of Object.keys(furtherDies(file))) {
		const place = inside(DIES, die);
		if (at === place) return { at: 'dieCalled', part: { die } };
		const figure = FIELD_NAMES.find((name) => at === inside(place, name));
		if (figure !== undefined && TOOLING_FIELDS[figure].with.includes('die'))
			return { at: 'dieFigure', part: { die, figure } };
	}
	return null;
}
