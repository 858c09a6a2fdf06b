/** Several things in a sentence: `2`, `2 and 3`, `1, 2 and 3`. */
export function listed(all: readonly (string | number)[], last: 'and' | 'or' = 'and'): string {
	return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} ${last} ${all.at(-1)}`;
}
