import { CHECK_PARTS, type CheckKind } from '../../job/draft/check-questions.ts';
import { bendsIn, type Draft, type JobJson, unitsOf } from '../../job/draft/draft.ts';
import { FIELDS } from '../../job/draft/field-questions.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice } from '../shell/prompt.ts';
import { type Aside, asking, draftIn, type JobForm } from './form.ts';
import { growing, growthPicture } from './growth.ts';
import { degrees, endWords, inUnits, materialWords, pointWords, toolingWords, wayWords } from './job-words.ts';

/** What there is besides what is asked. */
export const MORE = { label: 'more', step: { step: 'formAside', aside: { aside: 'more' } } } as const;

/** The parts of a job, each with its answers, to be changed. */

export function asked(form: JobForm, label: string, question: Partial<Draft>): Choice<HomeStep> {
	return { label, step: { step: 'formShown', form: asking(form, question) } };
}

export function aside(label: string, which: Aside): Choice<HomeStep> {
	return { label, step: { step: 'formAside', aside: which } };
}

/** What is asked of tube and tooling, each with its answer. */
export function tubeView(form: JobForm): HomeView {
	return asideView('Tube and die', 'What to change', tubeChoices(form));
}

/** The bends or points, each with its numbers. */
export function shapeView(form: JobForm): HomeView {
	const anew = asked(form, 'another shape, from its first bend or point', { at: 'shape' });
	const so = growing(form, '');
	const view = asideView('Shape', 'What to change', [...shapeChoices(form), ...endChoices(form), anew]);
	return so === null ? view : { ...view, picture: (look) => growthPicture(so, look) };
}

function tubeChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const { tube = {}, tooling = {} } = file;
	const units = unitsOf({ file });
	return [
		asked(form, `name: ${file.name ?? ''}`, { at: 'name' }),
		asked(form, `material: ${materialWords(tube.material)}`, { at: 'material' }),
		asked(form, `outside diameter: ${inUnits(tube.od, units)}`, { at: 'od' }),
		asked(form, `wall: ${inUnits(tube.wall, units)}`, { at: 'wall' }),
		asked(form, `piece in hand: ${tube.stock === undefined ? 'not known' : inUnits(tube.stock, units)}`, {
			at: 'stock',
		}),
		asked(form, `heat or certificate: ${tube.heat ?? 'none'}`, { at: 'heat' }),
		asked(form, `bender and die: ${toolingWords(tooling, units)}`, { at: 'die' }),
		asked(
			form,
			`clamp needs: ${tooling.clamp === undefined ? 'as kept, else nothing' : inUnits(tooling.clamp, units)}`,
			{ at: 'clamp' },
		),
		asked(
			form,
			`needed behind the last bend: ${tooling.follow === undefined ? 'as kept, else nothing' : inUnits(tooling.follow, units)}`,
			{ at: 'follow' },
		),
	];
}

function shapeChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const units = unitsOf({ file });
	const { bends = [], points, last, radius } = file.shape ?? {};
	if (points !== undefined) {
		return [
			...points.map((point, item) => aside(`point ${item + 1}: ${pointWords(point)}`, { aside: 'point', item })),
			asked(form, 'a further point', { at: 'x', item: points.length, put: 'add' }),
		];
	}
	return [
		...bends.map(({ straight, angle, rotation, die }, item) =>
			aside(
				`bend ${item + 1}: ${inUnits(straight, units)}, then ${degrees(angle)}${item === 0 ? '' : `, ${wayWords(rotation)}`}${die === undefined ? '' : `, die ${die}`}`,
				{ aside: 'bend', item },
			),
		),
		asked(form, `last straight: ${inUnits(last, units)}`, { at: 'last' }),
		asked(form, `radius drawn: ${radius === undefined ? "the die's" : inUnits(radius, units)}`, {
			at: 'field',
			field: 'shape.radius',
		}),
		asked(form, 'further bends', { at: 'piece' }),
	];
}

/** What each end meets. */
function endChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	return (['start', 'far'] as const).map((end) =>
		asked(form, `${end} end: ${endWords(file, end)}`, { at: 'endFit', part: { end } }),
	);
}

/** Trims, and the fields that most jobs leave out. */
export function fieldsView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	// What belongs to the shape stands among its parts.
	const others = Object.entries(FIELDS).filter(([field]) => !field.startsWith('shape.'));
	const choices = others.map(([field, { label, without }]) => {
		const value = fieldValue(file, field);
		return asked(form, `${label}: ${value ?? `left out (${without})`}`, { at: 'field', field });
	});
	const units = unitsOf({ file });
	const trim = (value: unknown) => (value === undefined ? 'none' : inUnits(value, units));
	const trims = [
		asked(form, `trim at the start end: ${trim(file.trim?.start)}`, { at: 'trimStart' }),
		asked(form, `trim at the far end: ${trim(file.trim?.end)}`, { at: 'trimEnd' }),
	];
	const opens = asked(form, `a bend may be opened: ${file.mayOpen === false ? 'no' : 'yes'}`, { at: 'mayOpen' });
	return asideView('Trims and other figures', 'What to change', [...trims, opens, ...choices]);
}

function fieldValue(file: JobJson, field: string): unknown {
	const [group, key] = field.split('.') as [keyof JobJson, string?];
	const value = file[group];
	return key === undefined ? value : (value as Record<string, unknown> | undefined)?.[key];
}

/** The checks, and a further one. */
export function checksView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	const checks = (file.checks ?? []) as Record<string, unknown>[];
	const further = asked(form, 'a further check', { at: 'checkKind', item: checks.length, put: 'add' });
	const choices = checks.map((check, item) => aside(checkLabel(check), { aside: 'check', item }));
	return asideView('Checks', 'Number of your choice', bendsIn({ file }) > 0 ? [...choices, further] : choices);
}

function checkLabel(check: Record<string, unknown>): string {
	const kind = (Object.keys(CHECK_PARTS) as CheckKind[]).find((each) => each in check);
	return `${check.name}: ${kind ?? ''}`;
}

/** A page of choices that leads back to the overview. */
export function asideView(title: string, label: string, choices: readonly Choice<HomeStep>[]): HomeView {
	return {
		title,
		prompt: {
			label,
			choices,
			back: { label: 'back', step: { step: 'formBack' } },
			empty: 'Write the number of a choice and press Enter; / goes back.',
		},
		body: () => [],
	};
}
