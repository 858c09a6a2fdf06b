/**
 * Places in which two JSON values differ, written as in `shape.bends[0].angle`. A place that only one of them has counts.
 */
export function changedPlaces(kept: unknown, now: unknown, place = ''): string[] {
	if (Object.is(kept, now)) return [];
	if (!isTree(kept) || !isTree(now) || Array.isArray(kept) !== Array.isArray(now))
		return [place === '' ? 'job' : place];
	const keys = [...new Set([...Object.keys(kept), ...Object.keys(now)])];
	return keys.flatMap((key) => changedPlaces(kept[key], now[key], placeInJob(place, key, Array.isArray(kept))));
}

function placeInJob(place: string, key: string, list: boolean): string {
	if (list) return `${place}[${key}]`;
	return place === '' ? key : `${place}.${key}`;
}

function isTree(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null;
}
