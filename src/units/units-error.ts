/** A text that is no length, angle or number. The message names the text and what would be right. */
export class UnitsError extends Error {
	override name = 'UnitsError';
	/** What stood there. */
	readonly text: string;
	/** What is wrong with it and what would be right, to stand after the text. */
	readonly right: string;

	constructor(text: string, right: string) {
		super(`"${text}" cannot be read: ${right}`);
		this.text = text;
		this.right = right;
	}
}
