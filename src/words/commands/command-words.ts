/** What `pullbook help` says of a command. */
export interface CommandWords {
	/** A few words, to stand behind its name. */
	summary: string;
	/** Each option by its name. */
	options: Readonly<Record<string, string>>;
	/** Words that may stand in place of its first operand. */
	words?: Readonly<Record<string, string>>;
	examples: readonly (readonly [line: string, does: string])[];
	/** Lines under the options. */
	notes?: readonly string[];
}
