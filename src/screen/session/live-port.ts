import type { AmendPreview } from '../../session/advice/amend-preview.ts';
import type { Batch } from '../../session/batch/batch.ts';
import type { Answered } from '../../session/log/answered.ts';
import type { Answer, HalfAnswer } from '../../session/protocol/action.ts';
import type { Ask } from '../../session/protocol/asks.ts';
import type { Output } from '../../session/protocol/notes.ts';
import type { Placed } from '../../session/report/set-ups.ts';
import type { Job } from '../../tube/job.ts';
import type { Shape } from '../../tube/shape.ts';

/** A pull of the bend at work, with the readings that count. */
export interface MadePull {
	loaded: number;
	released: number | null;
	measured: readonly number[];
	/** Before which of `measured`, counted from 0, the bend was opened. */
	opened?: readonly number[];
}

/** A session that is going on, as the screen needs it. */
export interface LivePort {
	readonly id: string;
	readonly job: Job;
	/** The finished tube as the session was laid out for it. */
	readonly drawn: Shape;
	readonly logPath: string;
	/** The command that goes on with it another time; left out where nothing does. */
	readonly resume?: string;
	/** What has been shown so far, the opening's lines first. */
	readonly outputs: readonly Output[];
	/** The open ask; null when the session is done or scrapped. */
	ask(): Ask | null;
	/**
	 * Saves the answer and gives what follows: notes, then the next ask. A `refused` note means that nothing was kept.
	 * @throws an error with `exitCode` 5 when the disk refuses; nothing was kept then
	 */
	answer(answer: Answer): Output[];
	/** What was answered so far, oldest first. */
	history(): readonly Answered[];
	/** The entry that taking back would void; null when there is none. */
	undoable(): number | null;
	/** Sentences for the operator about the log itself, oldest first: a cut line set aside, a log that had to move. */
	readonly messages: readonly string[];
	/**
	 * Goes on in a folder that the operator agreed to, with all that was saved so far; left out where nothing is to be kept.
	 * @throws an error with `exitCode` 5 when no log can be written there either, 4 when another session has the log
	 */
	rescue?(folder: string): void;
	/** A folder to offer for that; null where none is known to be good. */
	rescuePlace?(): string | null;
	/** On a simulated bender: what its instruments show at the open ask, in a sentence. */
	sight?(): string | null;
	/** The first number of the open question's answer, where it was kept and the rest is still to come. */
	draft?(): HalfAnswer | null;
	/** The pulls of the bend at work, oldest first. */
	pulls?(): readonly MadePull[];
	/** Where the tube was set for the bend at work; null before that. */
	placed?(): Placed | null;
	/** The tube's center line: made bends as made, the others as planned now. */
	shape?(): Shape;
	/** The heat of its tube; null where nobody said. */
	heat?(): string | null;
	/** What its batch has come to, once it is over; null where it is a single tube. */
	batch?(): Batch | null;
	/** What an answer would change; nothing is kept. */
	wouldBe?(answer: Answer): AmendPreview;
	close(): void;
}
