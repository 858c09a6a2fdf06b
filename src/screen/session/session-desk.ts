import type { Answer, HalfAnswer } from '../../session/protocol/action.ts';
import type { Size } from '../../terminal/output.ts';
import { errorWords } from '../../words/error.ts';
import { farewellWords } from '../../words/session/said.ts';
import { exitCodeOf } from '../shell/app-state.ts';
import type { Display, DisplayPort } from '../shell/display.ts';
import { USUAL_DISPLAY } from '../shell/display.ts';
import { lookOf } from '../shell/look.ts';
import { joined, type ShownAlready, warningsIn } from './following.ts';
import type { LivePort } from './live-port.ts';
import { openedOnScreen } from './opened-on-screen.ts';
import { viewOf } from './pages/index.ts';
import { sessionFrame } from './session-frame.ts';
import {
	type AnswerResult,
	afterAnswer,
	afterDraft,
	afterPreview,
	isRefused,
	notSaved,
	rescued,
} from './session-reducer.ts';
import { type Amending, type Page, type SessionState, standingOf } from './session-state.ts';

/** What comes of an answer: the session goes on, or it is left with that exit code. */
export type Saved = { session: SessionState } | { left: number };

/** Holds the session that is open. Answers are saved through its port; nothing is shown as saved before it has said so. */
export class SessionDesk {
	private live: LivePort | null = null;
	private seen: ShownAlready = { cautions: false, warnings: [] };

	constructor(private readonly display: DisplayPort) {}

	/** Opens a session, in place of the one that was open; in a window of that size. */
	open(live: LivePort, size: Size): SessionState {
		this.close();
		this.live = live;
		const session = openedOnScreen(live, { ...USUAL_DISPLAY, ...this.display.kept() }, this.seen);
		const warnings = warningsIn(live.outputs);
		this.seen = {
			cautions: true,
			warnings: [...this.seen.warnings, ...(warnings === null ? [] : [JSON.stringify(warnings)])],
		};
		const one = joined(session);
		return one !== null && hasRoom(one, size) ? one : session;
	}

	close(): void {
		this.live?.close();
		this.live = null;
	}

	keepDisplay(changes: Partial<Display>): void {
		this.display.keep(changes);
	}

	/** Where the session that is left is kept and how it goes on; null when there is none. */
	farewell(): string | null {
		const { live } = this;
		if (live === null || live.resume === undefined || live.ask() === null) return null;
		return farewellWords(live.logPath, live.resume);
	}

	/** What a correction would change is worked out on a copy. */
	weigh(session: SessionState, amending: Amending): SessionState {
		const { entry, reading, value } = amending;
		const action = { do: 'amend', entry: entry.entry, reading: value, ...(reading && { of: reading.of }) } as const;
		const would = this.live?.wouldBe?.({ action }) ?? null;
		return afterPreview(session, { ...amending, would });
	}

	/** Keeps the first number of an answer before the second is asked for. */
	keepDraft(session: SessionState, draft: HalfAnswer, page: Page): SessionState {
		const { live } = this;
		if (live === null) return session;
		try {
			return afterDraft(session, page, answeredBy(live, { action: { do: 'draft', draft } }));
		} catch (error) {
			const exitCode = exitCodeOf(error);
			if (exitCode === null) throw error;
			return notSaved(session, errorWords(error), exitCode);
		}
	}

	/** Goes on in another folder; where none can be written there either, the page says so and stays. */
	rescue(session: SessionState, folder: string): SessionState {
		const { live } = this;
		if (live?.rescue === undefined) return session;
		const heard = live.messages.length;
		try {
			live.rescue(folder);
		} catch (error) {
			if (exitCodeOf(error) === null) throw error;
			return { ...session, message: { kind: 'wrong', text: errorWords(error) } };
		}
		return rescued(session, live.logPath, live.messages.slice(heard));
	}

	/** @throws an error of the program's own; what the disk refuses is said in the state */
	save(session: SessionState, answer: Answer): Saved {
		const { live } = this;
		if (live === null) return { session };
		const quit = answer.action?.do === 'quit';
		try {
			const result = answeredBy(live, answer);
			if (quit && !isRefused(result)) return { left: session.unsaved ?? 3 };
			return { session: afterAnswer(session, result) };
		} catch (error) {
			const exitCode = exitCodeOf(error);
			if (exitCode === null) throw error;
			return quit ? { left: exitCode } : { session: notSaved(session, errorWords(error), exitCode) };
		}
	}
}

/** Whether a window shows all of the page that is open. */
function hasRoom(session: SessionState, size: Size): boolean {
	const look = lookOf({ TERM: 'xterm' }, true);
	return !sessionFrame({ session, shown: viewOf(session) }, size, look).short;
}

/** What comes of an answer, with what the log has to say about itself meanwhile. */
function answeredBy(live: LivePort, answer: Answer): AnswerResult {
	const heard = live.messages.length;
	const outputs = live.answer(answer);
	return { outputs, messages: live.messages.slice(heard), ...standingOf(live) };
}
