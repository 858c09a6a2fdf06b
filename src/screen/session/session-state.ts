import type { AmendPreview } from '../../session/advice/amend-preview.ts';
import type { Batch } from '../../session/batch/batch.ts';
import type { Answered } from '../../session/log/answered.ts';
import type { Reading } from '../../session/log/events.ts';
import type { Answer, HalfAnswer } from '../../session/protocol/action.ts';
import type { Ask, SetAsk } from '../../session/protocol/asks.ts';
import type { ChangeDie } from '../../session/protocol/facts/caution.ts';
import type { EvidenceKind, ToMeasure } from '../../session/protocol/kinds.ts';
import type { CorrectedNote, DoneNote, SessionNote, WarningsNote } from '../../session/protocol/notes.ts';
import type { Placed } from '../../session/report/set-ups.ts';
import type { Shape } from '../../tube/shape.ts';
import type { ShownJob } from '../../words/lengths.ts';
import type { TopicName } from '../../words/topics/topic-names.ts';
import type { Display } from '../shell/display.ts';
import type { Key } from '../shell/keys.ts';
import type { FieldEntry } from '../shell/prompt.ts';
import type { LivePort, MadePull } from './live-port.ts';

/** Which page of a session is on the screen. */
export type Page =
	/** The first of a session: what is dangerous, what was warned of, and with `layout` the tube laid out, as far as they were not seen in this sitting. */
	| { page: 'start'; note: SessionNote; cautions: boolean; warnings: WarningsNote | null; layout: boolean }
	/** More, from that page. */
	| { page: 'atStart'; from: Page }
	| { page: 'layout' }
	/** Another die goes in before the tube is set. */
	| { page: 'changeDie'; change: ChangeDie }
	| { page: 'help'; from: Page }
	/** Under help, which was opened from that page. */
	| { page: 'shown' | 'topics'; from: Page }
	| { page: 'corrected'; note: CorrectedNote }
	| { page: 'done'; note: DoneNote }
	/** The last of it by itself: a small window has no room for all. */
	| { page: 'cuts'; note: DoneNote }
	/** What the batch came to. */
	| { page: 'batch'; note: DoneNote }
	| { page: 'ask' }
	| { page: 'released'; loaded: number }
	| { page: 'least'; greatest: number }
	| { page: 'more' }
	| { page: 'undo' }
	| { page: 'detail'; of: Detail }
	| { page: 'amend' }
	| { page: 'amendWhich'; entry: Answered }
	| { page: 'amendValue'; entry: Answered; reading: Reading | null }
	/** `from`: the question from which the arrow keys led here. */
	| { page: 'walk'; at: number; from: Page }
	| { page: 'amendSure'; amending: Amending }
	| { page: 'evidence' }
	| { page: 'evidenceBend'; kind: EvidenceKind }
	| { page: 'evidenceValue'; kind: EvidenceKind; bend: number }
	| { page: 'measureAgain' }
	| { page: 'again'; of: ToMeasure }
	| { page: 'whatIf' }
	/** All of what a small window cuts of the advice's reason. */
	| { page: 'why' }
	| { page: 'reopen' }
	| { page: 'reopenHow'; bend: number }
	/** `open`: degrees to open by and the angle to read then, where they are advised. */
	| { page: 'relief'; bend: number; answer: Answer; open?: OpenBy }
	| { page: 'scrap'; why: string }
	| { page: 'text'; purpose: 'note' | 'scrap' | 'rescue'; value: string }
	/** `from`: where it goes on afterwards. */
	| { page: 'text'; purpose: 'heat'; value: string; from: Page };

export interface OpenBy {
	by: number;
	to: number;
}

/** An earlier reading that is being corrected; `would`: what that would change, once it is known. */
export interface Amending {
	entry: Answered;
	reading: Reading | null;
	value: number;
	would: AmendPreview | null;
}

/** What may be told with `ready` besides the dial. */
export type Detail = 'mark' | 'rotation' | 'length';

/** What follows from an entry on a session's page. */
export type SessionStep =
	| { step: 'page'; page: Page }
	/** The first number of an answer is kept before the second is asked for on that page. */
	| { step: 'draft'; draft: HalfAnswer; page: Page }
	| { step: 'next' }
	| { step: 'detail'; of: Detail; value: number }
	| { step: 'answer'; answer: Answer }
	| { step: 'weigh'; amending: Amending }
	| { step: 'display'; changes: Partial<Display> }
	/** The disk refuses: go on in that folder. */
	| { step: 'rescue'; folder: string }
	/** A topic of help, to be read. */
	| { step: 'topic'; name: TopicName }
	/** The dial after release is asked for from here on, or not. */
	| { step: 'release'; asked: boolean }
	/** The session of that id goes on in place of this one, which is over; null: another of the same is begun. */
	| { step: 'follow'; id: string | null }
	| { step: 'leave' };

export interface Message {
	kind: 'said' | 'wrong' | 'unsaved';
	text: string;
}

/** What was typed before a doubt or a refusal could be read: it answers nothing until it is taken up. */
export interface Ahead {
	/** When the page came up, and when the newest of these keys came. */
	since: number;
	last: number;
	keys: readonly Key[];
}

export interface SessionState {
	id: string;
	job: ShownJob;
	/** What the person has chosen about how it is shown. */
	display: Display;
	logPath: string;
	history: readonly Answered[];
	/** The entry that taking back would void. */
	undoable: number | null;
	ask: Ask | null;
	/** What a simulated bender's instruments show at the ask; null on a real one. */
	sight: string | null;
	/** On a simulated bender, which forgets its tube: nobody can go on with that another time. */
	practice: boolean;
	/** The finished tube as the session was laid out for it. */
	drawn: Shape;
	/** The tube as made so far and as planned from here; null where only the drawing is known. */
	shape: Shape | null;
	/** The pulls of the bend at work. */
	pulls: readonly MadePull[];
	/** The heat of its tube; null where nobody said. */
	heat: string | null;
	/** Which piece of how many; null where it is a single tube. */
	piece: { number: number; wanted: number } | null;
	/** What the batch has come to, once the session is over. */
	batch: Batch | null;
	/** The mark and the turn that the pulls of the bend at work follow; null before it is set. */
	placed: Placed | null;
	/** The last `set` that was asked. */
	set: SetAsk | null;
	page: Page;
	/** Pages still to be seen before the ask. */
	queue: readonly Page[];
	entry: FieldEntry;
	details: Partial<Record<Detail, number>>;
	message: Message | null;
	/** Whether there has been a correction, so that there are older numbers to go back to. */
	corrected: boolean;
	/** Whether the dial after release is asked for; null: unless it was passed over twice. */
	release: boolean | null;
	/** What was typed before a doubt or a refusal could be read. */
	ahead: Ahead | null;
	/** Bends for which the caution about opening has been shown. */
	cautioned: readonly number[];
	/** The exit code for leaving while the disk refuses, else null. */
	unsaved: number | null;
	/** The folder to offer for going on elsewhere while the disk refuses, '' where none is known; null where there is no such way. */
	rescuePlace: string | null;
}

export const ASK: Page = { page: 'ask' };

/** What of a session changes with every answer. */
export type Standing = 'history' | 'undoable' | 'ask' | 'sight' | 'shape' | 'pulls' | 'placed' | 'heat' | 'batch';

/** How the session stands, as its port tells it. */
export function standingOf(port: LivePort): Pick<SessionState, Standing> {
	return {
		history: port.history(),
		undoable: port.undoable(),
		ask: port.ask(),
		sight: port.sight?.() ?? null,
		shape: port.shape?.() ?? null,
		pulls: port.pulls?.() ?? [],
		placed: port.placed?.() ?? null,
		heat: port.heat?.() ?? null,
		batch: port.ask() === null ? (port.batch?.() ?? null) : null,
	};
}

/** What the log has to say about itself, to be read before going on. */
export function toldMessage(messages: readonly string[]): Message | null {
	return messages.length === 0 ? null : { kind: 'wrong', text: messages.join(' ') };
}

/** Whether the numbers of before a correction may still be taken: before the bend's first seat, and not taken already. */
export function oldNumbersPossible(ask: Ask | null): boolean {
	return ask?.ask === 'set' && ask.seat === 1 && ask.plan === 'new';
}
