import type { BendJson, Draft, JobJson } from '../../job/draft/draft.ts';
import type { FieldPlace } from '../../job/facts/question.ts';
import type { CheckKind } from '../../session/protocol/kinds.ts';
import type { EndName } from '../../tube/job.ts';
import { formatAngle } from '../../units/format.ts';
import { counted } from '../counted.ts';
import type { Wording } from '../lengths.ts';
import { measureOf, shown } from '../numbers.ts';
import { placeWords } from './fields.ts';

/** What stands in a job file, in words; the file may have faults yet. */

const unitsIn = ({ units = 'in' }: JobJson): string => units;

/** Tube and tooling in a few words each, as far as they are known. */
export function summary(file: JobJson): string[] {
	const units = unitsIn(file);
	const { tube = {}, tooling } = file;
	const size = tube.wall === undefined ? inUnits(tube.od, units) : `${tube.od} x ${inUnits(tube.wall, units)}`;
	const stock = tube.stock === undefined ? '' : `${inUnits(tube.stock, units)} in hand`;
	return [
		[size, materialWords(tube.material), stock].filter((words) => words !== '').join(', '),
		tooling === undefined ? '' : toolingWords(tooling, units),
	].filter((words) => words !== '');
}

function materialWords(material: unknown): string {
	if (typeof material === 'string') return material;
	return typeof material === 'object' && material !== null && 'name' in material ? String(material.name) : '';
}

/** Without a radius: the die's own is kept with it, or not told yet. */
function toolingWords({ bender = 'shop', die, clr }: NonNullable<JobJson['tooling']>, units: string): string {
	const parts = [`bender ${bender}`, die && `die ${die}`, clr !== undefined && `radius ${inUnits(clr, units)}`];
	return parts.filter(Boolean).join(', ');
}

/** A value of the file with the job's unit, unless it was written with its own. */
function inUnits(value: unknown, units: string): string {
	if (value === undefined) return '';
	return typeof value === 'string' && /[a-z'"]/i.test(value) ? value : `${value} ${units}`;
}

/** As the file has it, where that is no number yet. */
function degreesOrNone(value: unknown): string {
	return typeof value === 'number' ? formatAngle(value, 2) : String(value ?? 'no angle');
}

function bendWayWords(rotation: unknown): string {
	if (rotation === 0) return 'the same way';
	return rotation === 180 || rotation === -180 ? 'the opposite way' : `turned ${degreesOrNone(rotation)}`;
}

/** A corner as it was typed. */
const pointWords = (point: readonly unknown[]): string => point.join(', ');

/** The corners so far, as they were typed; empty where the shape is not given by them. */
export function pointsWords({ file, part }: Pick<Draft, 'file' | 'part'>): string {
	const points = [...(file.shape?.points ?? []), ...(part.point === undefined ? [] : [part.point])];
	return points.length === 0
		? ''
		: `Points: ${points.map((point, at) => `${at + 1} (${pointWords(point)})`).join(' ')}`;
}

/** What one end meets. */
function endFitWords(file: JobJson, end: EndName): string {
	const cope = file.ends?.[end]?.cope;
	if (cope === undefined) return 'cut square';
	return `coped to a tube of ${inUnits(cope.od, unitsIn(file))} at ${degreesOrNone(cope.angle)}`;
}

/** Which ends are coped, behind the shape; empty where none is. */
function copedEndsWords({ ends = {} }: JobJson): string {
	const coped = (['start', 'far'] as const).filter((end) => ends[end]?.cope !== undefined);
	if (coped.length === 2) return ', both ends coped';
	return coped.length === 1 ? `, ${coped[0]} end coped` : '';
}

/** A line of the overview or of a list of parts: what it is, and what stands there. */
const row = (what: string, value: unknown): string => `${what}: ${value}`;

/** The lines of the overview. */
export const OVERVIEW_ROWS = {
	name: ({ name = '' }: JobJson): string => row('name', name),
	tube: (file: JobJson): string => row('tube and die', summary(file).join('; ')),
	shape: (file: JobJson): string => row('shape', `${shapeCount(file)}${copedEndsWords(file)}`),
	figures: 'how many, trims, tolerances and other figures',
	checks: ({ checks = [] }: JobJson): string => row('checks', checks.length === 0 ? 'none' : checks.length),
	notes: ({ notes = 'none' }: JobJson): string => row('notes', notes),
} as const;

function shapeCount({ shape: { bends = [], points } = {} }: JobJson): string {
	if (points !== undefined) return `${points.length} points`;
	return counted(bends.length, 'bend');
}

/** The lines of tube and die. */
export const TUBE_ROWS = {
	title: 'Tube and die',
	name: OVERVIEW_ROWS.name,
	material: ({ tube }: JobJson): string => row('material', materialWords(tube?.material)),
	od: (file: JobJson): string => row('outside diameter', inUnits(file.tube?.od, unitsIn(file))),
	wall: (file: JobJson): string => row('wall', inUnits(file.tube?.wall, unitsIn(file))),
	stock: (file: JobJson): string => row('piece in hand', inUnits(file.tube?.stock, unitsIn(file)) || 'not known'),
	heat: ({ tube }: JobJson): string => row('heat or certificate', tube?.heat ?? 'none'),
	die: (file: JobJson): string => row('bender and die', toolingWords(file.tooling ?? {}, unitsIn(file))),
	clamp: (file: JobJson): string => row('clamp needs', keptOr(file.tooling?.clamp, file)),
	follow: (file: JobJson): string => row('needed behind the last bend', keptOr(file.tooling?.follow, file)),
} as const;

const keptOr = (value: unknown, file: JobJson): string => inUnits(value, unitsIn(file)) || 'as kept, else nothing';

/** The lines of the shape and the ends. Bends and points count from 1. */
export const SHAPE_ROWS = {
	title: 'Shape',
	point: (point: readonly unknown[], number: number): string => row(`point ${number}`, pointWords(point)),
	furtherPoint: 'a further point',
	bend: ({ straight, angle, rotation, die }: BendJson, number: number, file: JobJson): string => {
		const way = number === 1 ? '' : `, ${bendWayWords(rotation)}`;
		const on = die === undefined ? '' : `, die ${die}`;
		return row(`bend ${number}`, `${inUnits(straight, unitsIn(file))}, then ${degreesOrNone(angle)}${way}${on}`);
	},
	last: (file: JobJson): string => row('last straight', inUnits(file.shape?.last, unitsIn(file))),
	radius: (file: JobJson): string => row('radius drawn', inUnits(file.shape?.radius, unitsIn(file)) || "the die's"),
	furtherBends: 'further bends',
	/** `item`: the bend, from 0. */
	die: ({ shape, tooling }: JobJson, item: number): string => {
		const own = tooling?.die === undefined ? "the job's" : `the job's, ${tooling.die}`;
		return row('its die', shape?.bends?.[item]?.die ?? own);
	},
	end: (file: JobJson, end: EndName): string => row(`${end} end`, endFitWords(file, end)),
	anew: 'another shape, from its first bend or point',
} as const;

/** The lines of trims and of the fields that most jobs leave out. */
export const FIGURE_ROWS = {
	title: 'How many, trims and other figures',
	trim: (end: EndName, file: JobJson): string => {
		const value = end === 'start' ? file.trim?.start : file.trim?.end;
		return row(`trim at the ${end} end`, inUnits(value, unitsIn(file)) || 'none');
	},
	opens: ({ mayOpen }: JobJson): string => row('a bend may be opened', mayOpen === false ? 'no' : 'yes'),
	field: (place: FieldPlace, value: unknown): string => {
		const { label, without } = placeWords(place);
		return row(label, value ?? `left out (${without})`);
	},
} as const;

/** The lines of the checks. */
export const CHECK_ROWS = {
	title: 'Checks',
	/** `design`: what it should read, once that is known. */
	check: (name: unknown, kind: CheckKind | undefined, design?: { value: number; job: Wording }): string => {
		const reads = design && shown(design.value, measureOf('check', design.job, String(name)), design.job);
		return row(String(name), [kind, reads && `should read ${reads}`].filter(Boolean).join(', '));
	},
	further: 'a further check',
} as const;
