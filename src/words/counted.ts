/** The same where one is a word: `one session`, `3 sessions`. */
export const oneOrMore = (count: number, what: string): string => (count === 1 ? `one ${what}` : counted(count, what));

/** How many of what has a regular plural: `1 session`, `3 sessions`. */
export function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? '' : 's'}`;
}
