import { removeQuietly } from '../files/disk.ts';
import { isInMemory } from '../files/durable.ts';
import { realFs } from '../files/fs-port.ts';
import { ask } from '../session/ask.ts';
import { askedIn } from '../session/log/asked.ts';
import { changedPlaces } from '../session/log/changed-places.ts';
import type { Event } from '../session/log/events.ts';
import { initial } from '../session/log/fold.ts';
import { readBack, startIn, wantsAnew } from '../session/log/read-back.ts';
import type { Start } from '../session/log/start.ts';
import type { State } from '../session/log/state.ts';
import { outputsAfter, standing } from '../session/outputs.ts';
import type { Answer } from '../session/protocol/action.ts';
import { readAnswerText } from '../session/protocol/answer-text.ts';
import type { Ask } from '../session/protocol/asks.ts';
import type { NotSavedFact } from '../session/protocol/facts/index.ts';
import type { Output, RefusedNote } from '../session/protocol/notes.ts';
import { parseAnswer } from '../session/protocol/parse-answer.ts';
import { stepped } from '../session/step.ts';
import type { Lesson } from '../springback/history.ts';
import { cameTo, cameToField, type SessionOutcome } from './came-to.ts';
import { newSessionId, sessionPath } from './catalogue.ts';
import { JournalError, NotSaved } from './errors.ts';
import type { JournalNotice } from './facts.ts';
import { importMarkOf } from './import-mark.ts';
import { rowLeft } from './kept-row.ts';
import { SessionCache } from './kept-sessions.ts';
import { newStart } from './new-start.ts';
import { createLog, openLog } from './open-log.ts';
import { openingOutputs } from './opening-outputs.ts';
import type { NewPiece } from './pieces.ts';
import { anewNotice, anewOf } from './reckoned-anew.ts';
import type { LogRecord } from './record.ts';
import { type JobFile, openOptions, type Surroundings } from './surroundings.ts';
import type { LogWriter } from './writer.ts';

/**
 * A session with its log open. Every answer goes one way: events, next state, record on disk, state replaced, outputs.
 * Nothing is shown as saved before it is.
 */
export class LiveSession {
	readonly opening: readonly Output[];
	readonly id: string;
	/** What the operator should know: a cut line set aside, a log that had to move. */
	readonly notices: JournalNotice[] = [];
	/** How it was ended in this sitting; null while it is open. */
	ended: 'done' | 'left' | null = null;
	#state: State;
	/** What it came to, where its last line says so. */
	#outcome: SessionOutcome | null = null;
	#isClosed = false;
	readonly #log: LogWriter;
	readonly #world: Surroundings;

	private constructor(world: Surroundings, log: LogWriter, state: State, opening: Output[]) {
		this.#world = world;
		this.#log = log;
		this.#state = state;
		this.id = state.start.id;
		this.opening = opening;
		if (ask(state) === null) this.ended = 'done';
	}

	/**
	 * Begins a new session: with `learn` from what `lessons` taught, else from mechanics alone, and then it teaches no other either.
	 * Throws NotSaved when its log cannot be made.
	 */
	static begin(
		world: Surroundings,
		file: JobFile,
		learn: boolean,
		others: readonly string[],
		lessons: readonly Lesson[] = [],
		piece: NewPiece & Pick<Start, 'simulated'> = {},
	): LiveSession {
		const now = world.now();
		const id = newSessionId(now, world.random());
		const start = newStart(world, id, now, file, learn, lessons, piece);
		const path = sessionPath(world.home, id);
		const log = createLog(path, { seq: 0, v: 1, at: start.at, start }, openOptions(world, now));
		const state = initial(start);
		const opening = openingOutputs(state, log.path, others, {
			resumed: false,
			...(piece.alike !== undefined && { alike: piece.alike }),
		});
		const session = new LiveSession(world, log, state, opening);
		if (log.isAway) session.notices.push(log.wentOn);
		return session;
	}

	/**
	 * Goes on with a kept session at the ask that was open; a finished one opens at its last ask. `jobSource` is the job file as
	 * it is now (undefined when it cannot be read): the job kept in the log governs. `lessonsBefore`: what the sessions before it taught, asked for
	 * only where its prior is of another model.
	 */
	static resume(
		world: Surroundings,
		id: string,
		jobSource: unknown,
		others: readonly string[],
		lessonsBefore: (start: Start) => readonly Lesson[] = () => [],
	): LiveSession {
		const now = world.now();
		const { log, records, notices } = openLog(sessionPath(world.home, id), openOptions(world, now));
		try {
			const anew = wantsAnew(records) ? anewOf(startIn(records[0]!), lessonsBefore) : null;
			const resumed: Event = { type: 'session-resumed', ...(anew && { anew }) };
			const record = { seq: records.length, v: 1 as const, at: now.toISOString(), events: [resumed] };
			const state = readBack([...records, record]);
			log.append(record);
			// From here on it is bent here, and offered as what was begun here.
			removeQuietly(world.fs ?? realFs, importMarkOf(sessionPath(world.home, id)));
			const { start } = state;
			const changed = jobSource === undefined ? ['job'] : changedPlaces(start.jobSource, jobSource);
			const opening = openingOutputs(state, log.path, others, { resumed: true, changed });
			const session = new LiveSession(world, log, state, opening);
			session.notices.push(...notices);
			if (anew) session.notices.push(anewNotice(anew));
			return session;
		} catch (error) {
			log.close();
			throw error;
		}
	}

	get state(): State {
		return this.#state;
	}

	get logPath(): string {
		return this.#log.path;
	}

	/** No answer can be saved in its log any more: it goes on elsewhere, or not at all. */
	get isLost(): boolean {
		return this.#log.isOver;
	}

	/** The folder that resuming has to be told of: its log could not be; null otherwise. */
	get untoldFolder(): string | null {
		return this.#log.untoldFolder;
	}

	get ask(): Ask | null {
		return ask(this.#state);
	}

	/** Takes one line of the line mode. */
	answerText(line: string): Output[] {
		const read = readAnswerText(line, Buffer.byteLength(line));
		if ('misread' in read) return this.#refused({ note: 'refused', code: 'not-understood', reason: [read.misread] });
		const parsed = parseAnswer(read.raw, this.#state);
		return 'refused' in parsed ? this.#refused(parsed.refused) : this.answer(parsed);
	}

	/**
	 * Takes one answer. What it returns besides a refusal is true on disk. A refusal as not saved says whether the same answer may be given
	 * again; where it may not, `isLost`. Throws Overtaken where another session has the log: nothing is written over that.
	 */
	answer(answer: Answer): Output[] {
		const before = this.#state;
		const open = ask(before);
		const step = stepped(answer, before, { at: this.#world.now().toISOString(), asked: askedIn(open) });
		if ('refused' in step) return this.#refused(step.refused);
		const { record, next } = step;
		const isLast = answer.action?.do === 'quit' || ask(next) === null;
		const outcome = isLast ? cameTo(next) : null;
		const line = { seq: record.entry, v: 1 as const, at: record.at, ask: open, answer, events: record.events };
		const unsaved = this.#append(outcome === null ? line : { ...line, ...cameToField(outcome, next.start.job) });
		if (unsaved !== null) {
			if (isPlainQuit(answer)) return this.#leftUnlogged();
			return this.#refused({ note: 'refused', code: 'not-saved', reason: [unsaved] });
		}
		this.#state = next;
		this.#outcome = outcome;
		if (answer.action?.do === 'quit') return this.#end('left');
		if (ask(next) === null) this.#end('done');
		// A rescue may have moved the log: its path is asked for only now.
		return outputsAfter(before, next, record, this.logPath);
	}

	/** Goes on in a folder that the operator agreed to. Throws NotSaved where none can be written there either, and Overtaken. */
	rescue(folder: string): void {
		this.notices.push(this.#log.rescue(folder));
		if (isInMemory(folder)) this.notices.push({ code: 'in-memory', folder });
	}

	/** Leaves the session to be resumed, as at the end of input. */
	leave(): void {
		this.answer({ action: { do: 'quit' } });
	}

	/** Ends the sitting: the log is closed, and what it came to is remembered for lists and for the sessions to come. */
	close(): void {
		if (this.#isClosed) return;
		this.#isClosed = true;
		this.#log.close();
		const touched = this.#state.entries.at(-1)?.at ?? this.#state.start.at;
		new SessionCache(this.#world.home, this.#world.fs).keep(
			rowLeft(this.logPath, this.#state, touched, this.#outcome ?? cameTo(this.#state)),
			this.#log.size,
		);
	}

	#end(how: 'done' | 'left'): Output[] {
		this.ended = how;
		return [];
	}

	#refused(note: RefusedNote): Output[] {
		return [note, standing(this.#state, this.logPath)];
	}

	/** Appends; elsewhere where that was agreed on beforehand. Gives why it is not saved; null where it is. */
	#append(record: LogRecord): NotSavedFact | null {
		const { rescue } = this.#world;
		const unsaved = this.#tried(record);
		if (unsaved === null || rescue == null || this.#log.isAway) return unsaved;
		try {
			this.rescue(rescue);
		} catch (error) {
			if (!(error instanceof NotSaved)) throw error;
			// Neither disk takes it: the first one's fault is what has to be mended.
			return unsaved;
		}
		return this.#tried(record);
	}

	#tried(record: LogRecord): NotSavedFact | null {
		try {
			this.#log.append(record);
			return null;
		} catch (error) {
			if (error instanceof JournalError && error.fact.code === 'not-saved') return error.fact;
			throw error;
		}
	}

	/** That somebody left is no reading: nothing is lost with it. */
	#leftUnlogged(): Output[] {
		this.notices.push({ code: 'leave-not-logged', log: this.logPath });
		return this.#end('left');
	}
}

function isPlainQuit({ action, note }: Answer): boolean {
	return action?.do === 'quit' && !note;
}
