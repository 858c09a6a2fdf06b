import { codeOf } from '../files/error-codes.ts';

/** What the session could not do with its log; `exitCode` as in the command reference. The message is meant for the operator. */
export class JournalError extends Error {
	readonly exitCode: number;
	constructor(message: string, exitCode: number, cause?: unknown) {
		super(message, cause === undefined ? undefined : { cause });
		this.name = new.target.name;
		this.exitCode = exitCode;
	}
}

/** The disk refused a write and the log stands as it was before; `final` is false when the same append may be tried again. */
export class NotSaved extends JournalError {
	readonly code: string;
	readonly final: boolean;
	constructor(message: string, cause: unknown, final = false) {
		super(message, 5, cause);
		this.code = codeOf(cause);
		this.final = final;
	}
}

/** The log file can no longer be trusted to keep anything more: every further append fails until `rescue` has moved to a new file. */
export class LogLost extends JournalError {
	readonly code: string;
	constructor(message: string, cause?: unknown) {
		super(message, 5, cause);
		this.code = codeOf(cause);
	}
}

/** Another process writes this log. */
export class Locked extends JournalError {
	readonly lock: string;
	constructor(message: string, lock: string) {
		super(message, 4);
		this.lock = lock;
	}
}

/** What is kept in the file is not what was written; `line` is the first bad line, counted from 1. */
export class Damaged extends JournalError {
	readonly path: string;
	readonly line: number;
	constructor(message: string, path: string, line: number) {
		super(message, 6);
		this.path = path;
		this.line = line;
	}
}

/** The log was written by a later version of the program; for this one it is as good as damaged. */
export class NewerFormat extends JournalError {
	readonly path: string;
	constructor(message: string, path: string) {
		super(message, 6);
		this.path = path;
	}
}

/** There is no session to go on with at this path: no file, an empty one, or one that has moved to where it is not now. */
export class NoLog extends JournalError {
	readonly path: string;
	constructor(message: string, path: string, cause?: unknown) {
		super(message, 2, cause);
		this.path = path;
	}
}
