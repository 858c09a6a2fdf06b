/** What is written on the left, and what it does or means. */
export type Row = readonly [left: string, right: string];

export interface TopicSection {
	heading: string;
	/** Paragraphs. */
	text?: readonly string[];
	/** Lines to be shown as they are. */
	shown?: readonly string[];
	rows?: readonly Row[];
}

/** A page of help that is about no single command: what to do first, then why. */
export interface Topic {
	/** What to type or press, and what comes of it. */
	examples: readonly Row[];
	sections: readonly TopicSection[];
}
