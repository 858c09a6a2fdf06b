import { askedIn } from './asked.ts';
import type { Event, EventType } from './events.ts';
import type { SessionRecord } from './fold.ts';
import { evolve, initial } from './fold.ts';
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
	holds: 'nothing' | 'no-start' | 'no-events' | { event: string };
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

const KNOWN: Readonly<Record<EventType, true>> = {
	'tube-set': true,
	'tube-still': true,
	'reading-taken': true,
	'reading-noted': true,
	'reading-doubted': true,
	'doubt-settled': true,
	'measuring-skipped': true,
	'check-skipped': true,
	'plan-chosen': true,
	'tube-taken-out': true,
	'bend-accepted': true,
	'pull-chosen': true,
	'relief-chosen': true,
	'bend-reopened': true,
	'tube-scrapped': true,
	'record-voided': true,
	'reading-amended': true,
	'draft-kept': true,
	'note-written': true,
	'heat-told': true,
	'session-left': true,
	'session-resumed': true,
};

/** The start that a log's first record holds. */
export function startIn(first: StoredRecord): Start {
	const { start } = first;
	if (isObject(start) && isObject(start.prior) && isObject(start.job) && isObject(start.job.tooling)) {
		const { bender, die } = start.job.tooling;
		const texts = [start.id, start.at, start.jobFile, start.job.name, bender, die];
		if (texts.every((text) => typeof text === 'string')) return start as unknown as Start;
	}
	throw new UnknownRecord(first.seq, 'no-start');
}

function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null;
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
	const { begun, read } = opened(records);
	return following(() => read.reduce(evolve, begun()));
}

/** As readBack, with every state on the way: the session as it began and after each line of its log. Never empty. */
export function readThrough(records: readonly StoredRecord[]): State[] {
	const { begun, read } = opened(records);
	return following(() => {
		const states = [begun()];
		for (const record of read) states.push(evolve(states.at(-1)!, record));
		return states;
	});
}

function opened(records: readonly StoredRecord[]): { begun: () => State; read: SessionRecord[] } {
	const [first, ...rest] = records;
	if (!first) throw new UnknownRecord(0, 'nothing');
	const read = rest.map(sessionRecord);
	const start = upToDate(startIn(first), anewIn(read));
	return { begun: () => initial(start), read };
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

function sessionRecord(record: StoredRecord): SessionRecord {
	const { events } = record;
	if (!Array.isArray(events)) throw new UnknownRecord(record.seq, 'no-events');
	for (const event of events) {
		const type = (event as { type?: unknown } | null)?.type;
		if (typeof type !== 'string' || !Object.hasOwn(KNOWN, type))
			throw new UnknownRecord(record.seq, { event: String(type) });
	}
	return { entry: record.seq, at: record.at, events: events as Event[], asked: askedIn(record.ask) };
}
