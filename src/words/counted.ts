/** How many of what has a regular plural: `1 session`, `3 sessions`. */
export function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? '' : 's'}`;
}
