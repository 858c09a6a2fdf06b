/** What there is to say of logs that are copied between folders, and of those that are looked through; `words` makes sentences of it. */
import type { Cause } from '../../session/protocol/facts/not-saved.ts';
import type { JournalFault } from '../facts.ts';

/** What became of a session that was to be copied. `path`: its log in the folder that it was copied to. */
export type Copied = { id: string; path: string } & (
	| { how: 'added' }
	/** All its lines are there already. */
	| { how: 'there' }
	/** The log there was a beginning of it, and has so many lines more now. */
	| { how: 'longer'; lines: number }
	/** It went on apart from `other` after so many lines: both are kept. */
	| { how: 'apart'; other: string; lines: number }
);

/** Why a log was left out. */
export type LeftOut =
	| JournalFault
	| { code: 'no-file'; log: string }
	| { code: 'too-long'; log: string; size: number; most: number }
	/** The log that is there is damaged; `whole` is the one that was to be copied. */
	| { code: 'damaged-there'; log: string; line: number; whole: string }
	/** Its session went on elsewhere, and must come home before it can take lines from another place. */
	| { code: 'away'; log: string }
	/** Another program was writing the log all the time. */
	| { code: 'busy'; log: string };

export interface LeftBehind {
	/** The session's id, or the file's name. */
	name: string;
	why: LeftOut;
}

/** What came of copying; `stopped`: the disk refused, and what comes after it was not tried. */
export interface Exchanged {
	copied: Copied[];
	left: LeftBehind[];
	stopped: { log: string; cause: Cause } | null;
}

/** What is no damage, and yet worth knowing. */
export type Noticed = { name: string } & (
	| { code: 'cut-line'; bytes: number }
	/** A log of the session `of` that went on apart from it. */
	| { code: 'apart'; of: string }
	| { code: 'no-log' }
);

/** What came of looking through every log. */
export interface Verified {
	sessions: number;
	lines: number;
	faults: LeftBehind[];
	noticed: Noticed[];
}
