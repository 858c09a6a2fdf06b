import { CHECK_PARTS } from '../../job/draft/check-questions.ts';
import { fieldOf } from '../../job/draft/current.ts';
import { bendsIn, type Draft, type JobJson } from '../../job/draft/draft.ts';
import { FIELDS, isField } from '../../job/draft/field-questions.ts';
import type { DraftPreview } from '../../job/draft/preview.ts';
import type { CheckKind } from '../../session/protocol/kinds.ts';
import { checkValue } from '../../tube/checks.ts';
import { finishedShape } from '../../tube/resolve.ts';
import { CHANGE } from '../../words/job-form/pages.ts';
import { CHECK_ROWS, FIGURE_ROWS, SHAPE_ROWS, TUBE_ROWS } from '../../words/job-form/part-lists.ts';
import type { Wording } from '../../words/lengths.ts';
import { CHOICE, KEY_SAYS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { choicesView } from '../home/plain-views.ts';
import type { Choice } from '../shell/prompt.ts';
import { growing, growthPicture, lengthsShortcut } from './growing.ts';
import { type Aside, asking, draftIn, type JobForm } from './job-form.ts';

/** What there is besides what is asked. */
export const MORE_KEY = { label: KEY_SAYS.more, step: { step: 'formAside', aside: { aside: 'more' } } } as const;

/** Help, from which one comes back to the page that asked for it. */
export function helpOf({ aside: from }: JobForm) {
	const step = { step: 'formAside', aside: { aside: 'help', from } } as const;
	return { keys: [['h', KEY_SAYS.help]], shortcuts: { h: step, '?': step } } as const;
}

/** The keys of a page that shows the tube so far. */
export function formKeys(form: JobForm, so: DraftPreview | null): Pick<HomeView, 'keys' | 'shortcuts'> {
	const [help, lengths] = [helpOf(form), lengthsShortcut(form, so)];
	return {
		keys: [...(lengths.keys ?? []), ...help.keys],
		shortcuts: { ...lengths.shortcuts, ...help.shortcuts },
	};
}

/** The parts of a job, each with its answers, to be changed. */

export function askingChoice(form: JobForm, label: string, question: Partial<Draft>): Choice<HomeStep> {
	return { label, step: { step: 'formShown', form: asking(form, question) } };
}

export function aside(label: string, which: Aside): Choice<HomeStep> {
	return { label, step: { step: 'formAside', aside: which } };
}

/** What is asked of tube and tooling, each with its answer. */
export function tubeListView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	const { title, ...rows } = TUBE_ROWS;
	const choices = (Object.keys(rows) as (keyof typeof rows)[]).map((at) => askingChoice(form, rows[at](file), { at }));
	return asideView(form, title, CHANGE, choices);
}

/** The bends or points, each with its numbers. */
export function shapeListView(form: JobForm): HomeView {
	const anew = askingChoice(form, SHAPE_ROWS.anew, { at: 'shape' });
	const so = growing(form, '');
	const view = asideView(form, SHAPE_ROWS.title, CHANGE, [...shapeChoices(form), ...endChoices(form), anew]);
	return so === null ? view : { ...view, picture: (look) => growthPicture(so, look) };
}

function shapeChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const { bends = [], points } = file.shape ?? {};
	if (points !== undefined) {
		return [
			...points.map((point, item) => aside(SHAPE_ROWS.point(point, item + 1), { aside: 'point', item })),
			askingChoice(form, SHAPE_ROWS.furtherPoint, { at: 'x', item: points.length, put: 'add' }),
		];
	}
	return [
		...bends.map((bend, item) => aside(SHAPE_ROWS.bend(bend, item + 1, file), { aside: 'bend', item })),
		askingChoice(form, SHAPE_ROWS.last(file), { at: 'last' }),
		askingChoice(form, SHAPE_ROWS.radius(file), { at: 'field', field: 'shape.radius' }),
		askingChoice(form, SHAPE_ROWS.furtherBends, { at: 'piece' }),
	];
}

/** What each end meets. */
function endChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	return (['start', 'far'] as const).map((end) =>
		askingChoice(form, SHAPE_ROWS.end(file, end), { at: 'endFit', part: { end } }),
	);
}

/** Trims, and the fields that most jobs leave out. */
export function figureListView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	const row = (field: Field) =>
		askingChoice(form, FIGURE_ROWS.field(field, fieldOf(file, field)), { at: 'field', field });
	return asideView(form, FIGURE_ROWS.title, CHANGE, [
		row('quantity'),
		askingChoice(form, FIGURE_ROWS.trim('start', file), { at: 'trimStart' }),
		askingChoice(form, FIGURE_ROWS.trim('far', file), { at: 'trimEnd' }),
		askingChoice(form, FIGURE_ROWS.opens(file), { at: 'mayOpen' }),
		...Object.keys(FIELDS).filter(isFurtherDown).map(row),
	]);
}

/** The radius drawn stands among the parts of the shape, the quantity before all others. */
const isFurtherDown = (place: string): place is Field =>
	isField(place) && place !== 'shape.radius' && place !== 'quantity';

type Field = keyof typeof FIELDS;

/** The checks, and a further one. */
export function checkListView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	const checks = (file.checks ?? []) as Record<string, unknown>[];
	const further = askingChoice(form, CHECK_ROWS.further, { at: 'checkKind', item: checks.length, put: 'add' });
	const designs = checkDesigns(form);
	const choices = checks.map((check, item) =>
		aside(CHECK_ROWS.check(check.name, kindIn(check), designs[item]), { aside: 'check', item }),
	);
	return asideView(form, CHECK_ROWS.title, CHOICE, hasBends(file) ? [...choices, further] : choices);
}

/** What each check should read on the finished tube, in their order; empty while the file is no job. */
function checkDesigns(form: JobForm): { value: number; job: Wording }[] {
	const so = growing(form, '');
	if (so === null) return [];
	const { job, growth } = so;
	const shape = finishedShape(job, growth);
	return job.checks.map((check) => ({ value: checkValue(check, shape, job.tube), job }));
}

const hasBends = (file: JobJson): boolean => bendsIn({ file }) > 0;

function kindIn(check: Record<string, unknown>): CheckKind | undefined {
	return (Object.keys(CHECK_PARTS) as CheckKind[]).find((each) => each in check);
}

/** A page of choices that leads back to the overview. */
export function asideView(form: JobForm, title: string, label: string, choices: readonly Choice<HomeStep>[]): HomeView {
	const view = choicesView(title, choices, { step: 'formBack' });
	return { ...view, prompt: { ...view.prompt, label }, ...helpOf(form) };
}
