import { type Draft, type JobJson, unitsOf } from '../../job/draft/draft.ts';
import type { EndName } from '../../tube/job.ts';
import { formatAngle } from '../../units/format.ts';

/** What stands in a job file, in words; the file may have faults yet. */

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

export function materialWords(material: unknown): string {
	if (typeof material === 'string') return material;
	return typeof material === 'object' && material !== null && 'name' in material ? String(material.name) : '';
}

export function toolingWords({ bender = 'shop', die, clr }: NonNullable<JobJson['tooling']>, units: string): string {
	const radius = clr === undefined ? 'radius as kept' : `radius ${inUnits(clr, units)}`;
	return `${bender}, ${die === undefined ? radius : `die ${die}, ${radius}`}`;
}

/** A value of the file with the job's unit, unless it was written with its own. */
export function inUnits(value: unknown, units: string): string {
	if (value === undefined) return '';
	return typeof value === 'string' && /[a-z'"]/i.test(value) ? value : `${value} ${units}`;
}

/** As the file has it, where that is no number yet. */
export function degrees(value: unknown): string {
	return typeof value === 'number' ? formatAngle(value, 2) : String(value ?? 'no angle');
}

export function wayWords(rotation: unknown): string {
	if (rotation === 0) return 'the same way';
	return rotation === 180 || rotation === -180 ? 'the opposite way' : `turned ${degrees(rotation)}`;
}

/** A corner as it was typed. */
export const pointWords = (point: readonly unknown[]): string => point.join(', ');

/** The corners so far, as they were typed; empty where the shape is not given by them. */
export function pointsWords({ file, part }: Pick<Draft, 'file' | 'part'>): string {
	const points = [...(file.shape?.points ?? []), ...(part.point === undefined ? [] : [part.point])];
	return points.length === 0
		? ''
		: `Points: ${points.map((point, at) => `${at + 1} (${pointWords(point)})`).join(' ')}`;
}

/** What one end meets. */
export function endWords(file: JobJson, end: EndName): string {
	const cope = file.ends?.[end]?.cope;
	if (cope === undefined) return 'cut square';
	return `coped to a tube of ${inUnits(cope.od, unitsOf({ file }))} at ${degrees(cope.angle)}`;
}

/** Which ends are coped, behind the shape; empty where none is. */
export function endsWords({ ends = {} }: JobJson): string {
	const coped = (['start', 'far'] as const).filter((end) => ends[end]?.cope !== undefined);
	if (coped.length === 2) return ', both ends coped';
	return coped.length === 1 ? `, ${coped[0]} end coped` : '';
}
