import { CHECK_PARTS, type CheckKind } from '../../job/draft/check-questions.ts';
import { bendsIn, type Draft, type JobJson, unitsOf } from '../../job/draft/draft.ts';
import { FIELDS } from '../../job/draft/field-questions.ts';
import { fileNameFor } from '../../job/draft/file-text.ts';
import { draftFaults } from '../../job/draft/preview.ts';
import { formatFault } from '../../job/fault.ts';
import { formatAngle } from '../../units/format.ts';
import type { HomeStep, HomeView } from '../home-view.ts';
import { wrapped } from '../line.ts';
import type { Choice } from '../prompt.ts';
import { type Aside, asking, draftIn, type JobForm } from './form.ts';
import { growing, growthPicture, growthSections } from './growth.ts';

/** The job as it stands: what it comes to, what to change of it, and + to save it. */
export function overviewView(form: JobForm): HomeView {
	const draft = draftIn(form);
	const faults = faultsOf(form);
	const so = growing(form, '');
	const to = form.from === null ? { file: fileNameFor(draft.file.name ?? '') } : { path: form.from };
	const save = { label: 'save it', step: { step: 'formSave', form, to, over: false } as const };
	return {
		title: 'The job',
		where: draft.file.name ?? 'a new job',
		prompt: {
			label: 'What to change',
			choices: parts(form),
			...(faults.length === 0 ? { plus: save } : {}),
			star: { label: 'help', step: { step: 'formAside', aside: { aside: 'help' } } },
			back: { label: 'back', step: { step: 'formBack' } },
			empty: `Write the number of a line to change it and press Enter${faults.length === 0 ? '; + saves the job' : ''}; / goes back.`,
		},
		body: (room) => [
			...faults.map((fault) => ({ rank: 0, lines: wrapped(`! ${formatFault(fault)}`, room.columns, 'wrong', 2) })),
			...growthSections(so, { ...room, rows: room.rows - OTHER_CHOICES }),
		],
		...(so === null ? {} : { picture: (look) => growthPicture(so, look) }),
	};
}

/** A draft never changes, so that its faults are looked for once. */
const FAULTS = new WeakMap<Draft, ReturnType<typeof draftFaults>>();

function faultsOf(form: JobForm): ReturnType<typeof draftFaults> {
	const draft = draftIn(form);
	const faults = FAULTS.get(draft) ?? draftFaults(draft, form.shop);
	FAULTS.set(draft, faults);
	return faults;
}

/** Rows that the overview's choices want more than a question does. */
const OTHER_CHOICES = 4;

function parts(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const { bends = [], points } = file.shape ?? {};
	const checks = file.checks?.length ?? 0;
	const shape =
		points === undefined ? `${bends.length} ${bends.length === 1 ? 'bend' : 'bends'}` : `${points.length} points`;
	return [
		asked(form, `name: ${file.name ?? ''}`, { at: 'name' }),
		aside(`tube and die: ${summary(file).join('; ')}`, { aside: 'tube' }),
		aside(`shape: ${shape}`, { aside: 'shape' }),
		aside('trims, tolerances, dial and other figures', { aside: 'fields' }),
		aside(`checks: ${checks === 0 ? 'none' : checks}`, { aside: 'checks' }),
		asked(form, `notes: ${file.notes ?? 'none'}`, { at: 'notes' }),
	];
}

/** Tube and tooling in a few words each, as far as they are known. */
export function summary(file: JobJson): string[] {
	const units = unitsOf({ file });
	const { tube = {}, tooling } = file;
	const size = tube.wall === undefined ? inUnits(tube.od, units) : `${tube.od} x ${inUnits(tube.wall, units)}`;
	const stock = tube.stock === undefined ? '' : `${inUnits(tube.stock, units)} in hand`;
	return [
		[size, materialWords(tube.material), stock].filter((words) => words !== '').join(', '),
		tooling === undefined ? '' : toolingWords(tooling, units),
	].filter((words) => words !== '');
}

function asked(form: JobForm, label: string, question: Partial<Draft>): Choice<HomeStep> {
	return { label, step: { step: 'formShown', form: asking(form, question) } };
}

function aside(label: string, which: Aside): Choice<HomeStep> {
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
	const view = asideView('Shape', 'What to change', [...shapeChoices(form), anew]);
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

function materialWords(material: unknown): string {
	if (typeof material === 'string') return material;
	return typeof material === 'object' && material !== null && 'name' in material ? String(material.name) : '';
}

function toolingWords({ bender = 'shop', die, clr }: NonNullable<JobJson['tooling']>, units: string): string {
	const radius = clr === undefined ? 'radius as kept' : `radius ${inUnits(clr, units)}`;
	return `${bender}, ${die === undefined ? radius : `die ${die}, ${radius}`}`;
}

/** A value of the file with the job's unit, unless it was written with its own. */
function inUnits(value: unknown, units: string): string {
	if (value === undefined) return '';
	return typeof value === 'string' && /[a-z'"]/i.test(value) ? value : `${value} ${units}`;
}

function shapeChoices(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const units = unitsOf({ file });
	const { bends = [], points, last } = file.shape ?? {};
	if (points !== undefined) {
		return [
			...points.map((point, item) => aside(`point ${item + 1}: ${point.join(', ')}`, { aside: 'point', item })),
			asked(form, 'a further point', { at: 'x', item: points.length, put: 'add' }),
		];
	}
	return [
		...bends.map(({ straight, angle, rotation }, item) =>
			aside(
				`bend ${item + 1}: ${inUnits(straight, units)}, then ${degrees(angle)}${item === 0 ? '' : `, ${wayWords(rotation)}`}`,
				{ aside: 'bend', item },
			),
		),
		asked(form, `last straight: ${inUnits(last, units)}`, { at: 'last' }),
		asked(form, 'further bends', { at: 'piece' }),
	];
}

/** As the file has it, where that is no number yet. */
function degrees(value: unknown): string {
	return typeof value === 'number' ? formatAngle(value, 2) : String(value ?? 'no angle');
}

function wayWords(rotation: unknown): string {
	if (rotation === 0) return 'the same way';
	return rotation === 180 || rotation === -180 ? 'the opposite way' : `turned ${degrees(rotation)}`;
}

/** Trims, and the fields that most jobs leave out. */
export function fieldsView(form: JobForm): HomeView {
	const { file } = draftIn(form);
	const choices = Object.entries(FIELDS).map(([field, { label, without }]) => {
		const value = fieldValue(file, field);
		return asked(form, `${label}: ${value ?? `left out (${without})`}`, { at: 'field', field });
	});
	const units = unitsOf({ file });
	const trim = (value: unknown) => (value === undefined ? 'none' : inUnits(value, units));
	const trims = [
		asked(form, `trim at the start end: ${trim(file.trim?.start)}`, { at: 'trimStart' }),
		asked(form, `trim at the far end: ${trim(file.trim?.end)}`, { at: 'trimEnd' }),
	];
	return asideView('Trims and other figures', 'What to change', [...trims, ...choices]);
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
