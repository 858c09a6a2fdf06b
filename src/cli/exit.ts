/** Exit codes as the command reference has them; 0 is all well. */
export const EXIT = {
	/** An error that nobody foresaw, or sticks that do not suffice. */
	failure: 1,
	badInput: 2,
	/** Left, to be resumed. */
	left: 3,
	/** Another session, or another program, has the log. */
	locked: 4,
	/** The disk refused a write. */
	notSaved: 5,
	/** A log is damaged. */
	damaged: 6,
} as const;
