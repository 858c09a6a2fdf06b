/** Characters of a value that a message repeats. */
const LONGEST = 60;

/** A value as JSON has it, cut where it runs long. */
export function asJson(value: unknown): string {
	// A long text is cut before it is written out.
	const text = JSON.stringify(typeof value === 'string' ? value.slice(0, LONGEST) : value);
	return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}
