import type { Answer, HalfAnswer } from '../../session/protocol/action.ts';
import type { Output, RefusedNote } from '../../session/protocol/notes.ts';
import { reasonWords } from '../../words/reason.ts';
import { notSavedHere, rescuedWords, savedWords, takenBackWords } from '../../words/session/said.ts';
import type { TopicName } from '../../words/topics/topic-names.ts';
import type { Display } from '../shell/display.ts';
import type { Key } from '../shell/keys.ts';
import { NOTHING, type Pressed, pressed, renewed } from '../shell/prompt.ts';
import { afterOutputs } from './following.ts';
import { quietWords } from './news.ts';
import { viewOf } from './pages/index.ts';
import { BACK, type PageView } from './pages/page.ts';
import { walked } from './pages/walk.ts';
import {
	type Amending,
	ASK,
	type Message,
	type Page,
	type SessionState,
	type SessionStep,
	type Standing,
	toldMessage,
} from './session-state.ts';
import { shortcutOf } from './shortcuts.ts';
import { aheadOf } from './typed-ahead.ts';

/** What the reducer wants done outside: an answer saved, or the session left. */
export type SessionEffect =
	| { effect: 'answer'; answer: Answer }
	| { effect: 'draft'; draft: HalfAnswer; page: Page }
	| { effect: 'weigh'; amending: Amending }
	| { effect: 'display'; changes: Partial<Display> }
	| { effect: 'rescue'; folder: string }
	| { effect: 'topic'; name: TopicName }
	/** The session of that id goes on in place of this one; null: another of the same. */
	| { effect: 'follow'; id: string | null }
	| { effect: 'leave' };

export interface Reduced {
	state: SessionState;
	effect?: SessionEffect;
}

/** What has come of an answer. */
export interface AnswerResult extends Pick<SessionState, Standing> {
	outputs: readonly Output[];
	/** What the log had to say about itself meanwhile. */
	messages: readonly string[];
}

/** A session with the view of its page. */
export interface SeenSession {
	session: SessionState;
	shown: PageView;
}

/** A key pressed on a session's page; `now`: milliseconds of a clock that only goes forward. */
export function sessionKey(seen: SeenSession, key: Key, now: number): Reduced {
	const ahead = aheadOf(seen.session, key, now);
	if (ahead === null) return keyTaken({ ...seen, session: { ...seen.session, ahead: null } }, key);
	return 'early' in ahead ? { state: ahead.early } : keysTakenUp({ ...seen.session, ahead: null }, ahead.taken);
}

/** What was typed too early, as if it was typed now. */
function keysTakenUp(session: SessionState, keys: readonly Key[]): Reduced {
	let reduced: Reduced = { state: session };
	for (const key of keys) {
		reduced = keyTaken({ session: reduced.state, shown: viewOf(reduced.state) }, key);
		if (reduced.effect !== undefined || reduced.state.page !== session.page) break;
	}
	return reduced;
}

function keyTaken({ session: state, shown }: SeenSession, key: Key): Reduced {
	const shortcut = shortcutOf(state, shown.prompt, key);
	if (shortcut !== null) return stepTaken(state, shortcut.step);
	const page = walked(state, key);
	if (page !== null) return stepTaken(state, { step: 'page', page });
	return afterKey(state, pressed(shown.prompt, renewed(state.entry, state.message, key), key));
}

/** The text field's text changed. `/` in an empty one goes back, but where a path is wanted: a numeric pad has no Esc. */
export function textChanged({ session: state, shown }: SeenSession, value: string): SessionState {
	if (state.page.page !== 'text') return state;
	const { value: before, purpose } = state.page;
	// A reason that was refused is a number typed by mistake: a pad cannot delete it.
	const anew = purpose === 'scrap' && state.message?.kind === 'wrong' && value.startsWith(before);
	const text = anew ? value.slice(before.length) : value;
	if (text === '/' && !shown.prompt.path && (anew || before === '')) return stepTaken(state, BACK.step).state;
	return { ...state, page: { ...state.page, value: text }, message: null };
}

/** Enter in the text field. */
export function textEntered({ session: state, shown }: SeenSession): Reduced {
	const { text } = shown.prompt;
	if (text === undefined || state.page.page !== 'text') return { state };
	const step = text(state.page.value.trim());
	return afterKey(state, typeof step === 'string' ? { wrong: step } : { step });
}

function afterKey(state: SessionState, result: Pressed<SessionStep>): Reduced {
	if ('entry' in result) return { state: { ...state, entry: result.entry, message: null } };
	if ('wrong' in result) return { state: { ...state, message: { kind: 'wrong', text: result.wrong } } };
	return stepTaken(state, result.step);
}

function stepTaken(state: SessionState, step: SessionStep): Reduced {
	const clear = { entry: NOTHING, message: null };
	switch (step.step) {
		case 'page':
			return { state: { ...state, ...clear, page: step.page } };
		case 'next': {
			const [page = ASK, ...queue] = state.queue;
			return { state: { ...state, ...clear, page, queue } };
		}
		case 'detail':
			return { state: { ...state, ...clear, page: ASK, details: { ...state.details, [step.of]: step.value } } };
		case 'answer':
			// What was typed stays on the screen until it is on the disk.
			return { state: cautionSeen(state), effect: { effect: 'answer', answer: step.answer } };
		case 'draft':
			return { state, effect: { effect: 'draft', draft: step.draft, page: step.page } };
		case 'weigh':
			return { state, effect: { effect: 'weigh', amending: step.amending } };
		case 'display': {
			const display = { ...state.display, ...step.changes };
			const job = { ...state.job, lengths: display.lengths };
			return { state: { ...state, ...clear, display, job }, effect: { effect: 'display', changes: step.changes } };
		}
		case 'rescue':
			return { state, effect: { effect: 'rescue', folder: step.folder } };
		case 'topic':
			return { state, effect: { effect: 'topic', name: step.name } };
		case 'release':
			return { state: { ...state, ...clear, page: ASK, release: step.asked } };
		case 'follow':
			return { state, effect: { effect: 'follow', id: step.id } };
		case 'leave':
			return { state, effect: { effect: 'leave' } };
	}
}

function cautionSeen(state: SessionState): SessionState {
	if (state.page.page !== 'relief') return state;
	return { ...state, cautioned: [...state.cautioned, state.page.bend] };
}

/** Whether nothing was kept of the answer. */
export const isRefused = ({ outputs }: AnswerResult): boolean =>
	outputs.some((output) => 'note' in output && output.note === 'refused');

/** The state after an answer was taken or refused by the session. */
export function afterAnswer(state: SessionState, { outputs, messages, ...standing }: AnswerResult): SessionState {
	const refused = outputs.find((output): output is RefusedNote => 'note' in output && output.note === 'refused');
	if (refused !== undefined) {
		const why = reasonWords(refused.reason, state.job);
		if (refused.code === 'not-saved') return notSaved({ ...state, ...standing }, why, NOT_SAVED, mayTryAgain(refused));
		return { ...state, ...standing, message: { kind: 'wrong', text: why } };
	}
	const next = backWhereTold(state, afterOutputs({ ...state, ...standing, unsaved: null }, outputs));
	const quiet = quietWords(outputs, state.job);
	return { ...next, message: toldMessage(messages) ?? messageWith(keptMessage(state, standing), quiet) };
}

/** A heat is told from any page, which then goes on. */
function backWhereTold({ page, queue }: SessionState, next: SessionState): SessionState {
	return page.page === 'text' && page.purpose === 'heat' ? { ...next, page: page.from, queue } : next;
}

/** The state once the first number of an answer is on the disk: the second is asked for. A refusal leaves the number in its field. */
export function afterDraft(
	state: SessionState,
	page: Page,
	{ outputs, messages, ...standing }: AnswerResult,
): SessionState {
	const refused = outputs.some((output) => 'note' in output && output.note === 'refused');
	if (refused) return afterAnswer(state, { outputs, messages, ...standing });
	return { ...state, ...standing, unsaved: null, page, entry: NOTHING, message: toldMessage(messages) };
}

/** The state once it is known what correcting a reading would change: that is read before it counts. */
export function afterPreview(state: SessionState, amending: Amending): SessionState {
	const why = amending.would?.refused ?? null;
	if (why !== null) return { ...state, message: { kind: 'wrong', text: reasonWords(why, state.job) } };
	return stepTaken(state, { step: 'page', page: { page: 'amendSure', amending } }).state;
}

/** The exit code when the disk refused a write. */
const NOT_SAVED = 5;

/** The state once the session goes on in another folder: the answer that was refused is asked for again. */
export function rescued(state: SessionState, logPath: string, messages: readonly string[]): SessionState {
	const text = rescuedWords(messages);
	return { ...state, logPath, unsaved: null, page: ASK, entry: NOTHING, message: { kind: 'wrong', text } };
}

/** The state after an answer could not be saved: everything stays as it was. Where another session has the log, no other folder helps either. */
export function notSaved(
	state: SessionState,
	why: string,
	exitCode: number,
	again = exitCode === NOT_SAVED,
): SessionState {
	const rescuePlace = exitCode === NOT_SAVED ? state.rescuePlace : null;
	const text = notSavedHere(why, { again, elsewhere: rescuePlace !== null });
	return { ...state, rescuePlace, unsaved: exitCode, message: { kind: 'unsaved', text } };
}

/** A log that has been given up takes no answer any more, however well its disk is again. */
const mayTryAgain = ({ reason }: RefusedNote): boolean =>
	reason.every((fact) => fact.code !== 'not-saved' || fact.again);

function messageWith(message: Message | null, words: string | null): Message | null {
	if (words === null) return message;
	return message === null ? { kind: 'said', text: words } : { ...message, text: `${message.text} ${words}` };
}

function keptMessage(
	{ history: before, job }: SessionState,
	{ history: after, ask }: Pick<AnswerResult, 'history' | 'ask'>,
): Message | null {
	const voided = after.find((each, at) => each.void && before[at]?.void === false);
	if (voided !== undefined) return { kind: 'said', text: takenBackWords(voided, job) };
	const last = after.at(-1);
	if (last === undefined || after.length <= before.length) return null;
	// Why a reading is doubted stands on the page that asks for it again.
	return { kind: 'said', text: savedWords(last, job, ask?.ask === 'confirm') };
}
