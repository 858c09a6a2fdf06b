import { roundedTo, upToThousandth } from '../../maths/scalar.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import { offsetByAngle, offsetByRun } from '../../tube/offset.ts';
import type { Fault, Found } from '../facts/index.ts';
import { readTooling } from '../tooling.ts';
import { type BendJson, type Draft, type FileValue, type JobJson, unitsOf } from './draft.ts';
import { lengthInFile } from './file-value.ts';
import type { FormShop } from './question.ts';

/** Offsets come to more decimals than any tape has: what is kept is finer than a hair of either unit. */
const PLACES = 6;

const roundedPlace = (value: number): number => roundedTo(value, PLACES);

function withShape(draft: Draft, shape: JobJson['shape']): Draft {
	return { ...draft, file: { ...draft.file, shape }, part: {} };
}

/** `items` with `fresh` where the draft says: at the end, in the place of the item in hand, or before it. */
function withPlaced<T>(items: readonly T[], fresh: readonly T[], { item, put }: Pick<Draft, 'item' | 'put'>): T[] {
	return items.toSpliced(item, put === 'instead' ? 1 : 0, ...fresh);
}

/** The draft with the bend in hand in its place. */
export function addBend(draft: Draft, rotation: number): Draft {
	const { straight, angle } = draft.part;
	const bends = draft.file.shape?.bends ?? [];
	// A die of its own is asked for by itself, and stays.
	const { die } = (draft.put === 'instead' && bends[draft.item]) || {};
	const bend: BendJson = {
		straight: straight!,
		angle: angle!,
		rotation: normalizeRotation(rotation),
		...(die !== undefined && { die }),
	};
	return withShape(draft, { ...draft.file.shape, bends: withPlaced(bends, [bend], draft) });
}

/** The draft with the two bends of the offset in hand, or why there are none. */
export function addOffset(draft: Draft, rotation: number, shop: FormShop): Draft | { fault: Fault } {
	const { piece, straight, rise = 0, run = 0, angle } = draft.part;
	const radius = drawnRadius(draft, shop);
	const offset =
		piece === 'slope'
			? offsetByAngle(rise, angle!, radius)
			: offsetByRun(rise, run, radius, piece === 'corners' ? 'corners' : 'tangents');
	const fault = offsetFault(draft, radius, offset?.straight ?? null);
	if (offset === null || fault !== null) return { fault: fault! };
	const bend = roundedPlace(offset.angle);
	const bends: BendJson[] = [
		{ straight: straight!, angle: bend, rotation: normalizeRotation(rotation) },
		{ straight: roundedPlace(offset.straight), angle: bend, rotation: 180 },
	];
	return withShape(draft, { ...draft.file.shape, bends: [...(draft.file.shape?.bends ?? []), ...bends] });
}

/** `between`: the straight between the two bends; null where no bends do it. */
function offsetFault({ part, item, file }: Draft, radius: number, between: number | null): Fault | null {
	const { rise = 0, run, angle } = part;
	const at = `shape.bends[${item}]`;
	const found: Found = angle === undefined ? { code: 'rise-and-run', rise, run } : { code: 'rise-at', rise, angle };
	const by = angle === undefined ? 'run' : 'angle';
	if (between === null) return { at, found, right: { code: 'offset', by } };
	if (between >= 0) return null;
	const short = upToThousandth(-between);
	return { at, found, right: { code: 'longer-offset', by, radius, short, units: unitsOf({ file }) } };
}

/** Center-line radius that the straights of the file are given for: the drawing's, else the die's; 0 where neither is known. */
function drawnRadius(draft: Draft, { lookup }: FormShop): number {
	const { tube, tooling, shape } = draft.file;
	const units = unitsOf(draft);
	if (shape?.radius !== undefined) return lengthInFile(shape.radius, units);
	const od = tube?.od === undefined ? undefined : lengthInFile(tube.od, units);
	return readTooling(tooling, od, units, lookup, () => {}).tooling.clr ?? 0;
}

export function addPoint(draft: Draft, point: FileValue[]): Draft {
	return withShape(draft, { points: withPlaced(draft.file.shape?.points ?? [], [point], draft) });
}

/** The file with the bend in hand as far as it is known, so that its faults are found before it is whole. */
export function partBend({ file, part, item, put }: Draft): JobJson {
	if (part.piece !== 'bend' || part.straight === undefined) return file;
	const { straight, angle } = part;
	// What is not asked yet of a bend that is being changed is as it was.
	const was = put === 'instead' ? file.shape?.bends?.[item] : undefined;
	const bend = { ...was, straight, ...(angle === undefined ? {} : { angle }) } as BendJson;
	return { ...file, shape: { ...file.shape, bends: withPlaced(file.shape?.bends ?? [], [bend], { item, put }) } };
}
