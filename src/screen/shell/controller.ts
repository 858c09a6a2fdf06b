import type { Size } from '../../terminal/output.ts';
import { withoutLast } from '../../terminal/width.ts';
import type { BentAs } from '../../tube/job.ts';
import { errorWords } from '../../words/error.ts';
import { HomeDesk } from '../home/home-desk.ts';
import type { HomePort } from '../home/home-port.ts';
import type { HomePage } from '../home/home-view.ts';
import { heard } from '../session/bell.ts';
import type { LivePort } from '../session/live-port.ts';
import { SessionDesk } from '../session/session-desk.ts';
import { type Reduced, type SessionEffect, sessionKey, textChanged, textEntered } from '../session/session-reducer.ts';
import type { Message, SessionState } from '../session/session-state.ts';
import { type AppState, exitCodeOf } from './app-state.ts';
import type { ClockAndBell } from './clock-and-bell.ts';
import type { DisplayPort } from './display.ts';
import type { Key } from './keys.ts';
import { leftOpen, newerDamaged, offerPageOf, type ScreenOpening } from './opening.ts';
import { readerKey } from './reader-state.ts';
import { type Seen, seen } from './seen.ts';
import { topicReader } from './topic-reader.ts';

/**
 * Holds what is on the screen, outside of React: a key is taken in at once, in the state that the key before it left, and handed to the
 * session or to the pages outside of it.
 */
export class Controller {
	/** The exit code, once the screen is to be closed. Rejects with an error that the screen cannot show. */
	readonly ended: Promise<number>;
	private state: Seen = { view: 'waiting' };
	/** What is to be said on the shell's own screen, once this one is closed. */
	farewell: string | null = null;
	private readonly early: Key[] = [];
	private readonly sessionDesk: SessionDesk;
	private readonly homeDesk: HomeDesk;
	/** Whether leaving the session leaves the program. */
	private direct: boolean;
	private readonly listeners = new Set<() => void>();
	private resolve: (exitCode: number) => void = () => {};
	private reject: (error: unknown) => void = () => {};

	constructor(
		private readonly port: HomePort,
		opening: ScreenOpening,
		private readonly size: () => Size,
		display: DisplayPort,
		private readonly world: ClockAndBell,
	) {
		this.ended = new Promise((resolve, reject) => {
			this.resolve = resolve;
			this.reject = reject;
		});
		this.sessionDesk = new SessionDesk(display);
		this.homeDesk = new HomeDesk(port, {
			now: this.snapshot,
			set: (state) => this.set(state),
			open: (target, resume, as) => this.open(target, resume, as),
			end: this.end,
			columns: () => this.size().columns,
			fail: this.fail,
		});
		this.direct = opening.jobPath !== undefined;
		if (opening.jobPath === undefined) this.home();
		else this.begin(opening.jobPath, opening);
	}

	readonly subscribe = (listener: () => void): (() => void) => {
		this.listeners.add(listener);
		return () => this.listeners.delete(listener);
	};

	readonly snapshot = (): Seen => this.state;

	/** Whether a text field has the focus, which needs its keys slowly. */
	readonly inText = (): boolean => {
		const { state } = this;
		return (state.view === 'session' || state.view === 'home') && state.shown.prompt.text !== undefined;
	};

	key(key: Key): void {
		const { state } = this;
		if (state.view === 'waiting') this.early.push(key);
		else if (state.view === 'reader') {
			const reader = readerKey(state.reader, key, this.size());
			this.set(reader === null ? state.back : { ...state, reader });
		} else if (this.inText() && key.key !== 'escape') return;
		else if (state.view === 'session') this.reduce(sessionKey(state, key, this.world.now()));
		else this.homeDesk.key(state, key);
	}

	/** What stands in the text field. */
	readonly text = (): string => {
		const { state } = this;
		if (state.view === 'home') return state.home.text;
		return state.view === 'session' && state.session.page.page === 'text' ? state.session.page.value : '';
	};

	textChanged(value: string): void {
		const { state } = this;
		if (state.view === 'home') this.homeDesk.text(state, value);
		if (state.view === 'session') this.set({ view: 'session', session: textChanged(state, value) });
	}

	textEntered(): void {
		const { state } = this;
		if (state.view === 'home') this.homeDesk.textEntered(state);
		if (state.view === 'session') this.reduce(textEntered(state));
	}

	/** Ends the screen with that exit code. What was answered is on the disk already. */
	readonly end = (exitCode: number): void => {
		this.farewell = this.sessionDesk.farewell();
		this.close();
		this.resolve(exitCode);
	};

	readonly fail = (error: unknown): void => {
		this.close();
		this.reject(error);
	};

	private close(): void {
		this.homeDesk.close();
		this.sessionDesk.close();
	}

	private set(state: AppState): void {
		const before = this.state.view === 'session' ? this.state.session : null;
		try {
			this.state = seen(
				state.view === 'session' ? { ...state, session: heard(before, state.session, this.world) } : state,
			);
		} catch (error) {
			// Else the program would end with the screen still up.
			this.fail(error);
			return;
		}
		for (const listener of this.listeners) listener();
		if (state.view !== 'waiting') this.takeEarly();
	}

	/** Keys that were typed while something was opened go to what was opened, one after the other. */
	private takeEarly(): void {
		const key = this.early.shift();
		if (key === undefined) return;
		this.take(key);
		if (this.state.view !== 'waiting') this.takeEarly();
	}

	/** Takes a key that no text field is there for yet: in free text it is written here. */
	take(key: Key): void {
		if (!this.inText() || key.key === 'escape') this.key(key);
		else if (key.key === 'return') this.textEntered();
		else if (key.key === 'character') this.textChanged(this.text() + key.text);
		else if (key.key === 'backspace') this.textChanged(withoutLast(this.text()));
	}

	/** One key, one update: where something is to be done first, only what comes of it is shown. */
	private reduce({ state, effect }: Reduced): void {
		try {
			if (effect === undefined) this.set({ view: 'session', session: state });
			else this.carryOut(state, effect);
		} catch (error) {
			this.fail(error);
		}
	}

	private carryOut(session: SessionState, effect: SessionEffect): void {
		switch (effect.effect) {
			case 'answer': {
				const saved = this.sessionDesk.save(session, effect.answer);
				if ('left' in saved) this.leaveSession(saved.left);
				else this.set({ view: 'session', session: saved.session });
				break;
			}
			case 'draft':
				this.set({ view: 'session', session: this.sessionDesk.keepDraft(session, effect.draft, effect.page) });
				break;
			case 'weigh':
				this.set({ view: 'session', session: this.sessionDesk.weigh(session, effect.amending) });
				break;
			case 'rescue':
				this.set({ view: 'session', session: this.sessionDesk.rescue(session, effect.folder) });
				break;
			case 'display':
				this.sessionDesk.keepDisplay(effect.changes);
				this.set({ view: 'session', session });
				break;
			case 'topic':
				topicReader(effect.name, this.size().columns).then(
					(reader) => this.set({ view: 'reader', reader, back: { view: 'session', session } }),
					this.fail,
				);
				break;
			case 'follow':
				this.follow(
					session,
					effect.id === null ? this.port.another?.(session.id) : this.port.openSession(effect.id, true),
				);
				break;
			case 'leave':
				this.leaveSession(session.unsaved ?? 0);
		}
	}

	private leaveSession(exitCode: number): void {
		if (this.direct) this.end(exitCode);
		else {
			this.close();
			this.home();
		}
	}

	private home(page: HomePage = { page: 'home' }, message: Message | null = null): void {
		if (page.page === 'home') this.direct = false;
		this.homeDesk.show(page, message);
	}

	private begin(jobPath: string, opening: ScreenOpening): void {
		const left = leftOpen(opening, () => this.port.sessions());
		if (left === null) this.open(jobPath, false);
		else if (typeof left === 'string') this.open(left, true);
		else this.home(offerPageOf(left, jobPath), newerDamaged(this.port.sessions(), left));
	}

	/** A session takes the place of one that is over; what keeps it from that is said on the page that stood there. */
	private follow(over: SessionState, next: Promise<LivePort> | undefined): void {
		const stays = (text: string) => ({ ...over, message: { kind: 'wrong', text } as const });
		if (next !== undefined) this.opening(next, (text) => this.set({ view: 'session', session: stays(text) }));
	}

	private open(target: string, resume: boolean, as?: BentAs): void {
		this.opening(this.port.openSession(target, resume, as), (text, error) => {
			// Started for this one job there is nowhere to go back to: the command line says what is wrong.
			if (this.direct) this.fail(error);
			else this.home({ page: 'home' }, { kind: 'wrong', text });
		});
	}

	private opening(next: Promise<LivePort>, refused: (text: string, error: unknown) => void): void {
		this.set({ view: 'waiting' });
		next.then(
			(live) => this.set({ view: 'session', session: this.sessionDesk.open(live, this.size()) }),
			(error: unknown) => (exitCodeOf(error) === null ? this.fail(error) : refused(errorWords(error), error)),
		);
	}
}
