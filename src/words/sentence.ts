/** With a full stop, unless it ends in a mark of its own. */
export function sentence(text: string): string {
	return /[.:?!]$/.test(text) ? text : `${text}.`;
}
