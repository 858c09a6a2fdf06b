/** What the journal has to say of a log, its lock and its folder; `words` makes sentences of it. Paths as the system has them. */
import type { UnknownLine } from '../session/log/read-back.ts';
import type { Cause, NotSavedFact } from '../session/protocol/facts/not-saved.ts';

/** Why a line is not what was written. */
export type LineFault =
	| { code: 'checksum' }
	| { code: 'not-json'; text: string }
	| { code: 'no-object' }
	| { code: 'format'; found: unknown; right: number }
	| { code: 'number'; found: unknown; right: number }
	| { code: 'no-time' }
	| { code: 'newline' }
	| { code: 'newer'; found: number; right: number };

/** Who holds a lock, as far as its file says. */
export interface HolderFact {
	pid: number;
	host: string;
}

/** Why something could not be done. */
export type JournalFault =
	| NotSavedFact
	| { code: 'log-absent'; log: string }
	| { code: 'log-empty'; log: string }
	| { code: 'log-exists'; log: string }
	| { code: 'log-unreadable' | 'log-not-created' | 'log-not-writable' | 'tail-stays'; log: string; cause: Cause }
	/** `line` counts from 1; `lines` are those before it that can be read. */
	| { code: 'log-damaged'; log: string; line: number; lines: number; why: LineFault }
	| { code: 'log-newer'; log: string; line: number; why: LineFault }
	/** Two logs of one session that each went on from line `lines`. */
	| { code: 'logs-parted'; log: string; other: string; lines: number }
	/** It went on in a place that is not there now. */
	| { code: 'log-elsewhere'; log: string; to: string; cause: Cause }
	| { code: 'not-an-id'; id: string }
	| { code: 'folder-unreadable'; folder: string; cause: Cause }
	/** Another session writes this log now; seen by its lock, or by what stands in it. */
	| { code: 'overtaken'; log: string; by: 'lock-gone' | 'lock-taken' | 'lines-added' }
	| { code: 'locked'; lock: string; holder: HolderFact | null }
	| { code: 'lock-unreadable' | 'lock-unwritable' | 'lock-stays'; lock: string; cause: Cause }
	| { code: 'not-rescued'; folder: string; cause: Cause }
	/** What the log holds was not written by this program, or by a later one. */
	| { code: 'does-not-follow'; text: string }
	/** Its lines come to something else than its last line, or the list that is kept, says. */
	| { code: 'comes-to-other'; log: string; by: 'last-line' | 'list' }
	| UnknownLine;

/** What was done that the operator should know. */
export type JournalNotice =
	| { code: 'tail-set-aside'; bytes: number; kept: string }
	/** `marked` null: the old log says where; else why it could not be told. */
	| { code: 'went-on-in'; log: string; unmarked: Cause | null }
	| { code: 'in-memory'; folder: string }
	| { code: 'merged-back'; from: string; lines: number }
	| { code: 'leave-not-logged'; log: string }
	| { code: 'reckoned-anew'; learned: boolean };

export type JournalFact = JournalFault | JournalNotice;
