import type { HolderFact, JournalFact, JournalFault, JournalNotice, LineFault } from '../journal/facts.ts';
import type { Cause, NotSavedFact, WriteFault } from '../session/protocol/facts/index.ts';
import { capital } from '../units/format.ts';
import { oneOrMore } from './counted.ts';
import { foreign } from './foreign.ts';

/** What there is to say of a log, its lock and its folder. */
export function journalWords(fact: JournalFact): string {
	return foreign(isNotice(fact) ? noticeWords(fact) : journalFaultWords(fact));
}

const NOTICES: Readonly<Record<JournalNotice['code'], true>> = {
	'tail-set-aside': true,
	'went-on-in': true,
	'in-memory': true,
	'merged-back': true,
	'leave-not-logged': true,
	'reckoned-anew': true,
};

const isNotice = (fact: JournalFact): fact is JournalNotice => Object.hasOwn(NOTICES, fact.code);

/** What was done. */
function noticeWords(fact: JournalNotice): string {
	switch (fact.code) {
		case 'tail-set-aside':
			return `The last line of the log was cut off in the middle (${fact.bytes} bytes, never saved). They are now in ${fact.kept}.`;
		case 'went-on-in': {
			const unmarked =
				fact.unmarked === null
					? ''
					: ` The old log could not be told where (${causeWords(fact.unmarked)}): resume with --rescue and that folder.`;
			return `The session goes on in ${fact.log}, with all its lines.${unmarked}`;
		}
		case 'in-memory':
			return `${fact.folder} lies in memory: what is kept there is gone after a power cut. Copy it to a disk soon.`;
		case 'merged-back':
			return `${lines(fact.lines)} that were kept in ${fact.from} are in the log again. The copy there is kept.`;
		case 'leave-not-logged':
			return `Your answers are kept in ${fact.log}. Only that you left is not.`;
		case 'reckoned-anew': {
			const way = 'Pullbook now works out springback in another way than when this session began.';
			return fact.learned
				? `${way} Stops may differ: it learned again from the tubes before this one.`
				: `${way} Stops may differ: what earlier tubes taught does not count here.`;
		}
	}
}

/** What could not be done, and what to do. */
function journalFaultWords(fact: JournalFault): string {
	switch (fact.code) {
		case 'not-saved':
			return notSavedWords(fact);
		case 'log-absent':
			return `There is no log ${fact.log}: pullbook log lists those that are kept.`;
		case 'log-empty':
			return `The log ${fact.log} holds no line: its session ended before the first was saved. Start a new one.`;
		case 'log-exists':
			return `There is a log ${fact.log} already. It was left as it is; start again.`;
		case 'log-unreadable':
			return `The log ${fact.log} cannot be read: ${causeWords(fact.cause)}. See that you may read it, and try again.`;
		case 'log-not-created':
			return `The log ${fact.log} cannot be written: ${causeWords(fact.cause)}. Nothing was started. Make room or choose another place with --home DIR.`;
		case 'log-not-writable':
			return `The log ${fact.log} cannot be written: ${causeWords(fact.cause)}. It can still be read. To go on elsewhere, resume with --rescue DIR.`;
		case 'tail-stays':
			return `The log ${fact.log} ends in a cut line that cannot be set aside: ${causeWords(fact.cause)}. No line was lost. Resume when the disk can be written.`;
		case 'log-damaged':
			return `The log ${fact.log} is damaged in line ${fact.line}: ${lineFaultWords(fact.why)}. Nothing was changed. ${readable(fact.lines)} If you have a copy of the file, put it back. To go on with another session name it: --resume ID.`;
		case 'log-newer':
			return `The log ${fact.log} was written by a later version of the program: in line ${fact.line} ${lineFaultWords(fact.why)}. Open it with that version; nothing was changed.`;
		default:
			return logPlaceWords(fact);
	}
}

type FaultWithPlace = Exclude<
	JournalFault,
	{
		code:
			| 'not-saved'
			| `log-${'absent' | 'empty' | 'exists' | 'unreadable' | 'not-created' | 'not-writable' | 'damaged' | 'newer'}`
			| 'tail-stays';
	}
>;

function logPlaceWords(fact: FaultWithPlace): string {
	switch (fact.code) {
		case 'logs-parted':
			return `${fact.log} and ${fact.other} are logs of one session that went on apart from line ${fact.lines + 1}. Move the one away that is not to count; pullbook log shows both.`;
		case 'log-elsewhere':
			return `The session of ${fact.log} went on in ${fact.to}, which cannot be read: ${causeWords(fact.cause)}. Put that disk back and try again, or name its folder with --rescue.`;
		case 'not-an-id':
			return `"${fact.id}" is not a session's id; pullbook log lists them.`;
		case 'folder-unreadable':
			return `The folder ${fact.folder} cannot be read: ${causeWords(fact.cause)}. See that you may read it, and try again.`;
		case 'overtaken':
			return `${OVERTAKEN[fact.by](fact.log)} Nothing more is saved here. Leave, then resume: all that was saved before is in the log.`;
		case 'locked':
			return `${holderWords(fact.holder)} has this session open. Finish it there. If that process has ended, remove ${fact.lock} and try again.`;
		case 'lock-unreadable':
			return `The lock ${fact.lock} cannot be read: ${causeWords(fact.cause)}. See that you may read it, and try again.`;
		case 'lock-unwritable':
			return `The lock ${fact.lock} cannot be written: ${causeWords(fact.cause)}. Nothing was changed. To go on elsewhere, add --rescue DIR.`;
		case 'lock-stays':
			return `The lock ${fact.lock}, left by a process that has ended, cannot be removed: ${causeWords(fact.cause)}. Remove it and try again.`;
		case 'not-rescued':
			return `No new log could be written in ${fact.folder}: ${causeWords(fact.cause)}. Name another folder, or write the reading down and resume when there is a disk to write to.`;
		case 'does-not-follow':
			return `What the log holds does not follow from one line to the next: ${fact.text}. Keep the file and start a new session.`;
		case 'comes-to-other':
			return OTHER[fact.by](fact.log);
		case 'unknown-line':
			return `Line ${fact.line} of the log holds ${heldWords(fact.holds)}, which this version of the program does not know. Open it with the version that wrote it, or a newer one; nothing was changed.`;
	}
}

const OVERTAKEN = {
	'lock-gone': (log: string) => `The lock of the log ${log} is gone, so another session may be writing there.`,
	'lock-taken': (log: string) => `Another session has taken over the log ${log}.`,
	'lines-added': (log: string) => `Another session has written in the log ${log}.`,
} as const;

const OTHER = {
	'last-line': (log: string) =>
		`The last line of ${log} says something else of the session than its lines before. Resume the session and leave it again: that adds a right line.`,
	list: (log: string) =>
		`The list says something else of the session than ${log} holds. Remove the folder cache in the home: the list is then made again from the logs.`,
} as const;

const HELD = { nothing: 'nothing', 'no-start': 'no start of a session', 'no-events': 'no events' } as const;

function heldWords(holds: Extract<JournalFault, { code: 'unknown-line' }>['holds']): string {
	if (typeof holds === 'string') return HELD[holds];
	if ('event' in holds) return `an event "${holds.event}"`;
	return holds.part === 'ask' ? 'a question in an odd form' : `the event "${holds.part}" in an odd form`;
}

function holderWords(holder: HolderFact | null): string {
	return holder === null ? 'Another process, just starting,' : `Process ${holder.pid} on ${holder.host}`;
}

const lines = (count: number): string => capital(oneOrMore(count, 'line'));

function readable(count: number): string {
	if (count === 0) return 'No line before it can be read, so the session cannot go on.';
	const before = count === 1 ? 'The line before it' : `The ${count} lines before it`;
	return `${before} can still be read (pullbook log), but the session cannot go on.`;
}

/** Why an answer is not on the disk, and what to do. */
export function notSavedWords({ log, lines: safe, again, why }: NotSavedFact): string {
	return foreign(readingNotSaved(log, safe, again, why));
}

function readingNotSaved(log: string, safe: number, again: boolean, why: WriteFault): string {
	const reason = writeFaultWords(why);
	if (!again) {
		return `This reading is not saved. The log ${log} can take no more: ${reason}. ${lines(safe)} before it are safe. Write the reading down, then leave and resume; --rescue DIR goes on in another folder.`;
	}
	const full = why.code === 'system' && why.cause.errno === 'ENOSPC';
	return `This reading is not saved in ${log}: ${reason}. ${full ? 'Make room on the disk and give it again' : 'Give it again when the disk is well'}.`;
}

function writeFaultWords(why: WriteFault): string {
	switch (why.code) {
		case 'system':
			return causeWords(why.cause);
		case 'half-written':
			return `${causeWords(why.cause)}, and what was half written cannot be taken back: ${causeWords(why.second)}`;
		case 'replaced':
			return 'another file has been put in its place';
		case 'resized':
			return `its size is ${why.is} bytes where ${why.was} were written, so something else has changed it`;
	}
}

function lineFaultWords(why: LineFault): string {
	switch (why.code) {
		case 'checksum':
			return 'its checksum does not match';
		case 'not-json':
			return `it is not JSON (${why.text})`;
		case 'no-object':
			return 'it is not a JSON object';
		case 'format':
			return `its format "v" is ${JSON.stringify(why.found)}, where ${why.right} is right`;
		case 'number':
			return `its number is ${JSON.stringify(why.found)}, where ${why.right} should follow`;
		case 'no-time':
			return 'it has no time "at"';
		case 'newline':
			return 'its newline has been changed';
		case 'newer':
			return `it has format ${why.found}, and this program reads up to ${why.right}`;
	}
}

const REASONS: Readonly<Record<string, string>> = {
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk quota is used up',
	EROFS: 'the disk is read-only',
	EIO: 'the disk reported a fault',
	EACCES: 'permission is denied',
	EPERM: 'permission is denied',
	ENOENT: 'the file or its folder is gone',
	ENODEV: 'the disk is gone',
};

/** What the system said, in plain words, its own name for it beside them. */
export function causeWords({ errno, text }: Cause): string {
	const words = REASONS[errno];
	return words === undefined ? text : `${words} (${errno})`;
}
