import { askedIn } from './asked.ts';
import type { SessionRecord } from './fold.ts';
import { evolve, initial } from './fold.ts';
import { isEvent, isEventType } from './form/event.ts';
import { isStart } from './form/start.ts';
import { isReckoned } from './reckoned.ts';
import { type Anew, isOfAnotherModel, type Start, upToDate } from './start.ts';
import type { State } from './state.ts';

/** A record as it stands in a log. */
export interface StoredRecord {
	seq: number;
	at: string;
	[key: string]: unknown;
}

/** What a line of the log holds that no session of this version has. */
export interface UnknownLine {
	code: 'unknown-line';
	line: number;
	/** `part`: the event, or the ask, that has not the form of one. */
	holds: 'nothing' | 'no-start' | 'no-events' | { event: string } | { part: string };
}

/** The log holds something that this version does not know, most likely written by a newer one. */
export class UnknownRecord extends Error {
	readonly exitCode = 6;
	readonly fact: UnknownLine;
	constructor(line: number, holds: UnknownLine['holds']) {
		const fact = { code: 'unknown-line', line, holds } as const;
		super(JSON.stringify(fact));
		this.fact = fact;
	}
}

/** The start that a log's first record holds. @throws UnknownRecord where it has not the form of one */
export function startIn(first: StoredRecord): Start {
	const { start } = first;
	if (isStart(start)) return start;
	throw new UnknownRecord(first.seq, 'no-start');
}

/**
 * What a log holds cannot be folded. Its checksums say that it is as it was written, not that what wrote it was this program.
 */
export class DoesNotFollow extends Error {
	readonly exitCode = 6;
	readonly fact: { code: 'does-not-follow'; text: string };
	constructor(cause: unknown) {
		const text = cause instanceof Error ? cause.message : String(cause);
		super(text, { cause });
		this.fact = { code: 'does-not-follow', text };
	}
}

/** What is reckoned from a log. @throws DoesNotFollow where that cannot be done */
export function following<T>(reckoned: () => T): T {
	try {
		return reckoned();
	} catch (error) {
		if (error instanceof UnknownRecord || error instanceof DoesNotFollow) throw error;
		throw new DoesNotFollow(error);
	}
}

/** What a log starts from, all of whose lines this version knows; nothing is folded. @throws UnknownRecord */
export function startOfKnown(records: readonly StoredRecord[]): Start {
	const [first, ...rest] = records;
	if (!first) throw new UnknownRecord(0, 'nothing');
	for (const record of rest) sessionRecord(record);
	return startIn(first);
}

/** Folds a whole log. Throws `UnknownRecord` on anything this version does not know: nothing is skipped; and `DoesNotFollow`. */
export function readBack(records: readonly StoredRecord[]): State {
	const { begun, read } = openedRecords(records);
	return following(() => read.reduce(evolve, begun()));
}

/** As readBack, with every state on the way: the session as it began and after each line of its log. Never empty. */
export function readThrough(records: readonly StoredRecord[]): State[] {
	const { begun, read } = openedRecords(records);
	return following(() => {
		const states = [begun()];
		for (const record of read) states.push(evolve(states.at(-1)!, record));
		return states;
	});
}

function openedRecords(records: readonly StoredRecord[]): { begun: () => State; read: SessionRecord[] } {
	const [first, ...rest] = records;
	if (!first) throw new UnknownRecord(0, 'nothing');
	const read = rest.map(sessionRecord);
	const start = upToDate(startIn(first), anewIn(read));
	return { begun: () => begunState(start), read };
}

function begunState(start: Start): State {
	const state = initial(start);
	if (!isReckoned(state)) throw new RangeError('with what the first line holds nothing can be worked out');
	return state;
}

/** What this model expects in place of a prior of another one, where the log was gone on with by it before. */
function anewIn(records: readonly SessionRecord[]): Anew | null {
	const all = records.flatMap(({ events }) =>
		events.flatMap((event) => (event.type === 'session-resumed' && event.anew ? [event.anew] : [])),
	);
	return all.findLast((anew) => !isOfAnotherModel(anew)) ?? null;
}

/** Whether a log has to be reckoned anew before it is gone on with: its prior is of another model, and nothing of this one is in its place. */
export function wantsAnew(records: readonly StoredRecord[]): boolean {
	const [first, ...rest] = records;
	return first !== undefined && isOfAnotherModel(startIn(first)) && anewIn(rest.map(sessionRecord)) === null;
}

/** Checksums say that a line is as it was written, not by whom: nothing is believed to be there that is not. */
function sessionRecord(record: StoredRecord): SessionRecord {
	const { seq, at, events, ask } = record;
	if (!Array.isArray(events)) throw new UnknownRecord(seq, 'no-events');
	for (const event of events) {
		if (isEvent(event)) continue;
		const type = String((event as { type?: unknown } | null)?.type);
		throw new UnknownRecord(seq, isEventType(type) ? { part: type } : { event: type });
	}
	const asked = askedIn(ask);
	if (asked === undefined) throw new UnknownRecord(seq, { part: 'ask' });
	return { entry: seq, at, events, asked };
}
