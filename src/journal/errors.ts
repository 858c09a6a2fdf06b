import { codeOf } from '../files/error-codes.ts';
import type { JournalFault } from './facts.ts';

type FaultOf<C extends JournalFault['code']> = C extends unknown ? Extract<JournalFault, { code: C }> : never;

/** What the session could not do with its log; `exitCode` as in the command reference. `words` tells the operator of its fact. */
export class JournalError extends Error {
	readonly fact: JournalFault;
	readonly exitCode: number;
	constructor(fact: JournalFault, exitCode: number, cause?: unknown) {
		super(JSON.stringify(fact), cause === undefined ? undefined : { cause });
		this.name = new.target.name;
		this.fact = fact;
		this.exitCode = exitCode;
	}
}

/** The disk refused a write and the log stands as it was before; `final` is false when the same append may be tried again. */
export class NotSaved extends JournalError {
	readonly code: string;
	readonly final: boolean;
	constructor(fact: JournalFault, cause: unknown, final = false) {
		super(fact, 5, cause);
		this.code = codeOf(cause);
		this.final = final;
	}
}

/** The log file can no longer be trusted to keep anything more: every further append fails until `rescue` has moved to a new file. */
export class LogLost extends JournalError {
	readonly code: string;
	constructor(fact: FaultOf<'not-saved'>, cause?: unknown) {
		super(fact, 5, cause);
		this.code = codeOf(cause);
	}
}

/** Another session writes this log now, or may: nothing more is written here. */
export class Overtaken extends JournalError {
	constructor(log: string, by: FaultOf<'overtaken'>['by']) {
		super({ code: 'overtaken', log, by }, 4);
	}
}

/** Another process writes this log. */
export class Locked extends JournalError {
	readonly lock: string;
	constructor(fact: FaultOf<'locked'>) {
		super(fact, 4);
		this.lock = fact.lock;
	}
}

/** What is kept in the file is not what was written; `line` is the first bad line, counted from 1. */
export class Damaged extends JournalError {
	readonly path: string;
	readonly line: number;
	constructor(fact: FaultOf<'log-damaged'>) {
		super(fact, 6);
		this.path = fact.log;
		this.line = fact.line;
	}
}

/** The log was written by a later version of the program; for this one it is as good as damaged. */
export class NewerFormat extends JournalError {
	readonly path: string;
	constructor(fact: FaultOf<'log-newer'>) {
		super(fact, 6);
		this.path = fact.log;
	}
}

/** Two logs of one session went on apart: which of them counts nobody but the operator knows. */
export class Parted extends JournalError {
	constructor(fact: FaultOf<'logs-parted'>) {
		super(fact, 6);
	}
}

/** There is no session to go on with at this path: no file, an empty one, or one that has moved to where it is not now. */
export class NoLog extends JournalError {
	readonly path: string;
	constructor(
		fact: FaultOf<'log-absent' | 'log-empty' | 'not-an-id' | 'log-elsewhere'>,
		path: string,
		cause?: unknown,
	) {
		super(fact, 2, cause);
		this.path = path;
	}
}
