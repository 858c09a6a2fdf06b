/** Characters of a value that a message repeats. */
const LONGEST = 60;

/** A value as JSON has it, cut where it runs long. */
export function asJson(value: unknown): string {
	// A long text is cut before it is written out.
	const text = JSON.stringify(typeof value === 'string' ? value.slice(0, LONGEST) : value);
	return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}

/** Whether it is an object by names: no list, and not null. */
export function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether it is an object that has that key, whatever stands there. */
export const hasKey = (value: unknown, key: string): boolean => isObject(value) && Object.hasOwn(value, key);
