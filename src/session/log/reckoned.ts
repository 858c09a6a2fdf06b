/** What a state leads back to or is started from is finite already. */
const LOOKED_AT = new Set(['past', 'finished', 'entries', 'start']);

/** Whether every number of a state is one: what arithmetic could not work out is never kept. */
export function isReckoned(value: unknown): boolean {
	if (typeof value === 'number') return Number.isFinite(value);
	if (typeof value !== 'object' || value === null) return true;
	if (Array.isArray(value)) return value.every(isReckoned);
	return Object.entries(value).every(([key, each]) => LOOKED_AT.has(key) || isReckoned(each));
}
