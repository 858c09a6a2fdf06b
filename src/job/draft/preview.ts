import { beginning, growthOf } from '../../session/log/start.ts';
import type { PlannedGrowth } from '../../tube/growth.ts';
import type { Job } from '../../tube/job.ts';
import type { Fault } from '../facts/index.ts';
import { readJob } from '../read.ts';
import { bendsIn, type Draft, type JobJson, unitsOf } from './draft.ts';
import { lengthInFile } from './file-value.ts';
import type { FormShop } from './question.ts';
import { addOffset, partBend } from './shape-parts.ts';

/** A draft as the job that it would be. */
export interface DraftPreview {
	job: Job;
	growth: PlannedGrowth;
	/** Whether the last straight, and so the cut length, is known; else one is thought up for the drawing. */
	ended: boolean;
	/** The bend in hand, from 1; one past the last when none is. */
	now: number;
}

/** A drawing shows no name. */
const NAMELESS = 'new';
/** Where the tube is not known yet something is taken that no mark depends on. */
const SOME_TUBE = { material: '1020-dom' };

/** What a draft comes to so far; null while it has no shape, or one that cannot be. */
export function draftPreview(draft: Draft, shop: FormShop): DraftPreview | null {
	const file = fileSoFar(draft, shop);
	const shape = shapeSoFar(file, draft);
	if (shape === null) return null;
	const { checks: _, trim, ...rest } = file;
	const read = readJob(
		{
			...rest,
			name: file.name ?? NAMELESS,
			units: unitsOf(draft),
			tube: { ...SOME_TUBE, ...file.tube },
			shape,
			...(trim === undefined ? {} : { trim }),
			...(draft.whole && file.checks !== undefined ? { checks: file.checks } : {}),
		},
		shop.lookup,
	);
	if ('faults' in read) return null;
	const points = file.shape?.points;
	const ended = file.shape?.last !== undefined || (points !== undefined && draft.part.point === undefined);
	const growth = growthOf(beginning(read, shop.lessons?.() ?? []));
	return { job: read.job, growth, ended, now: inHand(draft, bendsIn({ file })) };
}

/** The bend in hand, from 1: of a list of points the corner before the one that is added, since that is the one it makes. */
function inHand({ at, item, put, file }: Draft, bends: number): number {
	if (at === 'overview') return bends + 1;
	if (file.shape?.points === undefined) return item + 1;
	return put === 'add' ? item - 1 : item;
}

/** The file with the bend or the offset in hand; which way an offset goes is asked last, and till then it is drawn going the same way. */
function fileSoFar(draft: Draft, shop: FormShop): JobJson {
	const { piece, run, angle } = draft.part;
	const offset = piece !== undefined && piece !== 'bend' && (run !== undefined || angle !== undefined);
	const made = offset ? addOffset(draft, 0, shop) : null;
	return made === null || 'fault' in made ? partBend(draft) : made.file;
}

/** The shape with the bend or point in hand as far as it is known, and an end. */
function shapeSoFar(file: JobJson, { part, item, put }: Draft): JobJson['shape'] | null {
	const { bends, points, last, radius } = file.shape ?? {};
	if (points !== undefined) {
		const { point = [] } = part;
		const all = point.length < 2 ? points : points.toSpliced(item, put === 'instead' ? 1 : 0, [...point]);
		return all.length < 3 ? null : { points: all };
	}
	const known = (bends ?? [])
		.filter(({ angle }) => angle !== undefined)
		.map((bend) => ({ ...bend, rotation: bend.rotation ?? 0 }));
	if (known.length === 0) return null;
	return { bends: known, last: last ?? longest(file, known), ...(radius === undefined ? {} : { radius }) };
}

/** As long as the longest straight so far, so that it looks like one of them. */
function longest(file: JobJson, bends: readonly { straight: number | string }[]): number {
	return Math.max(...bends.map(({ straight }) => lengthInFile(straight, unitsOf({ file }))));
}

/** Every fault that the file would have as it stands. */
export function draftFaults({ file }: Draft, { lookup }: FormShop): readonly Fault[] {
	const read = readJob(file, lookup);
	return 'faults' in read ? read.faults : [];
}
