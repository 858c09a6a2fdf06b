/** What the system said: its name for the fault, '' where it has none, and its own text. */
export interface Cause {
	errno: string;
	text: string;
}

/** What keeps a line out of its log. */
export type WriteFault =
	| { code: 'system'; cause: Cause }
	/** Some of it stands in the file, and cannot be taken out again. */
	| { code: 'half-written'; cause: Cause; second: Cause }
	/** The name now belongs to another file. */
	| { code: 'replaced' }
	/** Something else has changed it; in bytes. */
	| { code: 'resized'; is: number; was: number };

/** The disk did not take an answer. `lines` are safe in the log; `again`: the same answer may be tried again. */
export interface NotSavedFact {
	code: 'not-saved';
	log: string;
	lines: number;
	again: boolean;
	why: WriteFault;
}
