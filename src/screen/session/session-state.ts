import type { Preview } from '../../session/advice/preview.ts';
import type { Answered } from '../../session/log/answered.ts';
import type { Reading } from '../../session/log/events.ts';
import type { Answer, HalfAnswer } from '../../session/protocol/action.ts';
import type { Ask, SetAsk } from '../../session/protocol/asks.ts';
import type { ChangeDie } from '../../session/protocol/facts/caution.ts';
import type { EvidenceKind, ToMeasure } from '../../session/protocol/kinds.ts';
import type { CorrectedNote, DoneNote, Output, SessionNote, WarningsNote } from '../../session/protocol/notes.ts';
import type { Shape } from '../../tube/shape.ts';
import type { ShownJob } from '../../words/lengths.ts';
import type { TopicName } from '../../words/topics/names.ts';
import type { Display } from '../shell/display.ts';
import type { Key } from '../shell/keys.ts';
import { type FieldEntry, NOTHING } from '../shell/prompt.ts';
import type { LivePort, MadePull } from './live-port.ts';
import { dieChangesIn, isNews } from './news.ts';

/** Which page of a session is on the screen. */
export type Page =
	| { page: 'start'; note: SessionNote }
	| { page: 'layout' }
	/** Another die goes in before the tube is set. */
	| { page: 'changeDie'; change: ChangeDie }
	| { page: 'help'; from: Page }
	/** Under help, which was opened from that page. */
	| { page: 'shown' | 'topics'; from: Page }
	| { page: 'warnings'; note: WarningsNote }
	| { page: 'corrected'; note: CorrectedNote }
	| { page: 'done'; note: DoneNote }
	/** The last of it by itself: a small window has no room for all. */
	| { page: 'cuts'; note: DoneNote }
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
	| { page: 'reopen' }
	| { page: 'reopenHow'; bend: number }
	/** `open`: degrees to open by and the angle to read then, where they are advised. */
	| { page: 'relief'; bend: number; answer: Answer; open?: Opening }
	| { page: 'scrap'; why: string }
	| { page: 'text'; purpose: 'note' | 'scrap' | 'rescue'; value: string };

export interface Opening {
	by: number;
	to: number;
}

/** An earlier reading that is being corrected; `would`: what that would change, once it is known. */
export interface Amending {
	entry: Answered;
	reading: Reading | null;
	value: number;
	would: Preview | null;
}

/** What may be told with `ready` besides the dial. */
export type Detail = 'mark' | 'rotation' | 'length';

/** What follows from an entry on a session's page. */
export type Step =
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
	| { step: 'leave' };

export interface Message {
	kind: 'said' | 'wrong' | 'unsaved';
	text: string;
}

/** What was typed before a doubt's page could be read: it answers nothing until it is taken up. */
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
	/** The last `set`, which holds the mark and the turn for the pulls that follow it. */
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
	/** What was typed before a doubt could be read. */
	ahead: Ahead | null;
	/** Bends for which the caution about opening has been shown. */
	cautioned: readonly number[];
	/** The exit code for leaving while the disk refuses, else null. */
	unsaved: number | null;
	/** The folder to offer for going on elsewhere while the disk refuses, '' where none is known; null where there is no such way. */
	rescuePlace: string | null;
}

export const ASK: Page = { page: 'ask' };

/** A session as it is opened: what was shown so far is shown again, down to the open ask. */
export function opened(port: LivePort, display: Display): SessionState {
	const blank: SessionState = {
		id: port.id,
		job: { ...port.job, lengths: display.lengths },
		drawn: port.drawn,
		display,
		logPath: port.logPath,
		...standingOf(port),
		practice: port.sight !== undefined,
		set: null,
		page: ASK,
		queue: [],
		entry: NOTHING,
		details: {},
		message: told(port.messages),
		corrected: false,
		release: null,
		ahead: null,
		cautioned: [],
		unsaved: null,
		rescuePlace: port.rescue === undefined ? null : (port.rescuePlace?.() ?? ''),
	};
	const state = followed(blank, port.outputs);
	const draft = port.draft?.() ?? null;
	return draft === null ? state : { ...state, ...lastOf([...pagesAhead(state), pageOf(draft)]) };
}

/** The pages still to be seen before the open question. */
const pagesAhead = ({ page, queue }: SessionState): Page[] => [page, ...queue].filter((each) => each !== ASK);

const lastOf = ([page = ASK, ...queue]: Page[]): Pick<SessionState, 'page' | 'queue'> => ({ page, queue });

/** The page that asks for the second number. */
function pageOf({ of, value }: HalfAnswer): Page {
	return of === 'loaded' ? { page: 'released', loaded: value } : { page: 'least', greatest: value };
}

/** What of a session changes with every answer. */
export type Standing = 'history' | 'undoable' | 'ask' | 'sight' | 'shape' | 'pulls';

/** How the session stands, as its port tells it. */
export function standingOf(port: LivePort): Pick<SessionState, Standing> {
	return {
		history: port.history(),
		undoable: port.undoable(),
		ask: port.ask(),
		sight: port.sight?.() ?? null,
		shape: port.shape?.() ?? null,
		pulls: port.pulls?.() ?? [],
	};
}

/** What the log has to say about itself, to be read before going on. */
export function told(messages: readonly string[]): Message | null {
	return messages.length === 0 ? null : { kind: 'wrong', text: messages.join(' ') };
}

/** The state after what the session put out: its notes become pages to be seen before the ask. */
export function followed(state: SessionState, outputs: readonly Output[]): SessionState {
	const pages = outputs.flatMap((output) => (isOver(state, outputs, output) ? [] : pagesOf(output, state, outputs)));
	const sets = outputs.filter((output): output is SetAsk => 'ask' in output && output.ask === 'set');
	const [page = ASK, ...queue] = pages;
	const corrected = state.corrected || outputs.some((output) => 'note' in output && output.note === 'corrected');
	return { ...state, page, queue, set: sets.at(-1) ?? state.set, corrected, entry: NOTHING, details: {} };
}

/** A session that goes on tells its last correction again: that is news only while it can still be chosen. */
function isOver({ ask }: SessionState, [first]: readonly Output[], output: Output): boolean {
	const again = first !== undefined && 'note' in first && first.note === 'session' && first.resumed;
	return again && 'note' in output && output.note === 'corrected' && !oldNumbersPossible(ask);
}

/** Whether the numbers of before a correction may still be taken: before the bend's first seat, and not taken already. */
export function oldNumbersPossible(ask: Ask | null): boolean {
	return ask?.ask === 'set' && ask.seat === 1 && ask.plan === 'new';
}

/** The straight tube is laid out before anything is bent. */
const LAYOUT: readonly Page[] = [{ page: 'layout' }];

function isFirst(ask: Ask | null): boolean {
	return ask?.ask === 'set' && ask.bend === 1 && ask.seat === 1;
}

function pagesOf(output: Output, { ask, display, job }: SessionState, all: readonly Output[]): Page[] {
	if ('ask' in output) return output.ask === 'set' ? dieChangesIn(output) : [];
	switch (output.note) {
		case 'session':
			return [{ page: 'start', note: output }, ...(display.checklist && isFirst(ask) ? LAYOUT : [])];
		case 'warnings':
			return [{ page: 'warnings', note: output }];
		case 'corrected':
			return isNews(output, job, all) ? [{ page: 'corrected', note: output }] : [];
		case 'done':
			return [{ page: 'done', note: output }];
		case 'refused':
			return [];
	}
}
