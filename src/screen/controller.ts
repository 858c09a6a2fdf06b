import type { Answer } from '../session/protocol.ts';
import type { Size } from '../terminal/output.ts';
import { type DisplayPort, USUAL_DISPLAY } from './display.ts';
import { type Done, typedInto, Workshop, type WorkshopStep } from './home-controller.ts';
import type { HomePort } from './home-port.ts';
import { type HomePage, type HomeState, homeState, homeView, searched, turned } from './home-state.ts';
import type { HomeStep } from './home-view.ts';
import type { Key } from './keys.ts';
import type { LivePort } from './live-port.ts';
import { viewOf } from './pages/index.ts';
import { pressed, renewed } from './prompt.ts';
import { type ReaderState, readerKey } from './reader-state.ts';
import { answered, notSaved, type Reduced, sessionKey, textChanged, textEntered, weighed } from './session-reducer.ts';
import { type Amending, type Message, opened, type SessionState, standing } from './session-state.ts';

export type AppState =
	| { view: 'home'; home: HomeState }
	| { view: 'reader'; reader: ReaderState; home: HomeState }
	| { view: 'session'; session: SessionState }
	| { view: 'waiting' };

/** What the screen opens with: the home page, or a job's session. */
export interface Opening {
	jobPath?: string;
	/** Go on with the job's newest interrupted session, or with the session of that id, without asking. */
	resume?: boolean | string;
}

/**
 * Holds what is on the screen, outside of React: a key is taken in at once, in the state that the key before it left. Saves
 * answers through the session's port; nothing is shown as saved before the port has said so.
 */
export class Controller {
	/** The exit code, once the screen is to be closed. Rejects with an error that the screen cannot show. */
	readonly ended: Promise<number>;
	private state: AppState;
	private checking: NodeJS.Timeout | undefined;
	/** What is to be said on the shell's own screen, once this one is closed. */
	farewell: string | null = null;
	private live: LivePort | null = null;
	private readonly early: Key[] = [];
	private readonly workshop: Workshop;
	/** Whether leaving the session leaves the program. */
	private direct: boolean;
	private readonly listeners = new Set<() => void>();
	private resolve: (exitCode: number) => void = () => {};
	private reject: (error: unknown) => void = () => {};

	constructor(
		private readonly port: HomePort,
		opening: Opening,
		private readonly size: () => Size,
		private readonly display: DisplayPort,
	) {
		this.ended = new Promise((resolve, reject) => {
			this.resolve = resolve;
			this.reject = reject;
		});
		this.workshop = new Workshop(port);
		this.direct = opening.jobPath !== undefined;
		this.state = { view: 'waiting' };
		if (opening.jobPath === undefined) this.home();
		else this.begin(opening.jobPath, opening.resume);
	}

	readonly subscribe = (listener: () => void): (() => void) => {
		this.listeners.add(listener);
		return () => this.listeners.delete(listener);
	};

	readonly snapshot = (): AppState => this.state;

	/** Whether a text field has the focus, which needs its keys slowly. */
	readonly inText = (): boolean => {
		const { state } = this;
		if (state.view === 'session') return viewOf(state.session).prompt.text !== undefined;
		return state.view === 'home' && homeView(state.home).prompt.text !== undefined;
	};

	key(key: Key): void {
		const { state } = this;
		if (state.view === 'waiting') this.early.push(key);
		if (state.view === 'session') {
			if (!this.inText() || key.key === 'escape') this.reduce(sessionKey(state.session, key));
		} else if (state.view === 'reader') {
			const reader = readerKey(state.reader, key, this.size());
			this.set(reader === null ? { view: 'home', home: state.home } : { ...state, reader });
		} else if (state.view === 'home' && (!this.inText() || key.key === 'escape')) this.homeKey(state.home, key);
	}

	/** What stands in the text field. */
	readonly text = (): string => {
		const { state } = this;
		if (state.view === 'home') return state.home.text;
		return state.view === 'session' && state.session.page.page === 'text' ? state.session.page.value : '';
	};

	textChanged(value: string): void {
		if (this.state.view === 'home') this.homeText(this.state.home, value);
		if (this.state.view === 'session') this.set({ view: 'session', session: textChanged(this.state.session, value) });
	}

	textEntered(): void {
		if (this.state.view === 'home') this.homeTextEntered(this.state.home);
		if (this.state.view === 'session') this.reduce(textEntered(this.state.session));
	}

	/** Ends the screen with that exit code. What was answered is on the disk already. */
	readonly end = (exitCode: number): void => {
		this.farewell = this.kept();
		this.closeSession();
		this.resolve(exitCode);
	};

	/** Where the session that was left is kept and how it goes on; null when there is none. */
	private kept(): string | null {
		const { live } = this;
		if (live === null || live.resume === undefined || live.ask() === null) return null;
		return `The session is kept: ${live.logPath}\nTo go on with it: ${live.resume}\n`;
	}

	readonly fail = (error: unknown): void => {
		this.closeSession();
		this.reject(error);
	};

	private set(state: AppState): void {
		this.state = state;
		for (const listener of this.listeners) listener();
		if (state.view !== 'waiting') this.takeEarly();
	}

	/** Keys that were typed while something was opened go to what was opened, one after the other. */
	private takeEarly(): void {
		const key = this.early.shift();
		if (key === undefined) return;
		if (!this.inText() || key.key === 'escape') this.key(key);
		else if (key.key === 'return') this.textEntered();
		else if (key.key === 'character') this.textChanged(this.text() + key.text);
		else if (key.key === 'backspace') this.textChanged(this.text().slice(0, -1));
		if (this.state.view !== 'waiting') this.takeEarly();
	}

	private reduce({ state, effect }: Reduced): void {
		this.set({ view: 'session', session: state });
		if (effect?.effect === 'answer') this.save(state, effect.answer);
		else if (effect?.effect === 'weigh') this.weigh(state, effect.amending);
		else if (effect?.effect === 'display') this.display.keep(effect.changes);
		else if (effect?.effect === 'leave') this.leaveSession(state.unsaved ?? 0);
	}

	/** What a correction would change is worked out on a copy. */
	private weigh(session: SessionState, amending: Amending): void {
		const { entry, reading, value } = amending;
		const action = { do: 'amend', entry: entry.entry, reading: value, ...(reading && { of: reading.of }) } as const;
		const would = this.live?.wouldBe?.({ action }) ?? null;
		this.set({ view: 'session', session: weighed(session, { ...amending, would }) });
	}

	private save(session: SessionState, answer: Answer): void {
		const { live } = this;
		if (live === null) return;
		const quit = answer.action?.do === 'quit';
		try {
			const heard = live.messages.length;
			const outputs = live.answer(answer);
			const next = answered(session, { outputs, messages: live.messages.slice(heard), ...standing(live) });
			const refused = outputs.some((output) => 'note' in output && output.note === 'refused');
			if (quit && !refused) this.leaveSession(session.unsaved ?? 3);
			else this.set({ view: 'session', session: next });
		} catch (error) {
			const exitCode = exitCodeOf(error);
			if (exitCode === null) this.fail(error);
			else if (quit) this.leaveSession(exitCode);
			else this.set({ view: 'session', session: notSaved(session, messageOf(error), exitCode) });
		}
	}

	private leaveSession(exitCode: number): void {
		if (this.direct) this.end(exitCode);
		else {
			this.closeSession();
			this.home();
		}
	}

	private closeSession(): void {
		clearTimeout(this.checking);
		this.live?.close();
		this.live = null;
	}

	private home(page: HomePage = { page: 'home' }, message: Message | null = null): void {
		if (page.page === 'home') this.direct = false;
		this.set({ view: 'home', home: homeState(this.port, page, message) });
		clearTimeout(this.checking);
		// Only when the page has been drawn: one sees the jobs at once, and what is wrong with one a moment later.
		if (this.port.checkedJobs !== undefined) this.checking = setTimeout(this.check, CHECK_AFTER_MS);
	}

	private readonly check = (): void => {
		const { state } = this;
		if (state.view !== 'home') return;
		try {
			this.set({ view: 'home', home: { ...state.home, jobs: this.port.checkedJobs?.() ?? state.home.jobs } });
		} catch (error) {
			this.fail(error);
		}
	};

	private begin(jobPath: string, resume: boolean | string | undefined): void {
		const left = this.port.sessions().find(({ path, status }) => path === jobPath && status === 'open');
		if (typeof resume === 'string') this.open(resume, true);
		else if (resume === true && left !== undefined) this.open(left.id, true);
		else if (resume === undefined && left !== undefined) {
			this.home({ page: 'offer', job: { path: jobPath, name: left.job, summary: '', open: left.id } });
		} else this.open(jobPath, false);
	}

	private homeKey(home: HomeState, key: Key): void {
		const found = searched(home, key);
		if (found !== null) {
			this.set({ view: 'home', home: found });
			return;
		}
		const outcome = pressed(homeView(home).prompt, renewed(home.entry, home.message, key), key);
		if ('step' in outcome) this.homeStep(home, outcome.step);
		else if ('wrong' in outcome) {
			this.set({ view: 'home', home: { ...home, message: { kind: 'wrong', text: outcome.wrong } } });
		} else this.set({ view: 'home', home: { ...home, entry: outcome.entry, message: null } });
	}

	private homeText(home: HomeState, value: string): void {
		const typed = typedInto(home, value);
		const { back } = homeView(home).prompt;
		if (typed !== 'back') this.set({ view: 'home', home: typed });
		else if (back !== undefined) this.homeStep(home, back.step);
	}

	private homeTextEntered(home: HomeState): void {
		const step = homeView(home).prompt.text?.(home.text.trim());
		if (typeof step === 'string') {
			this.set({ view: 'home', home: { ...home, message: { kind: 'wrong', text: step } } });
		} else if (step !== undefined) this.homeStep(home, step);
	}

	private homeStep(home: HomeState, step: HomeStep): void {
		switch (step.step) {
			case 'page':
				if (step.page.page === 'home') this.home();
				else this.set({ view: 'home', home: turned(home, step.page) });
				break;
			case 'open':
				this.open(step.target, step.resume);
				break;
			case 'review':
				this.read(home, `Session ${step.id}`, () => this.port.review(step.id));
				break;
			case 'learned':
				this.read(home, 'Benders and dies', () => this.port.benders());
				break;
			case 'leave':
				this.end(0);
				break;
			default:
				this.work(home, step);
		}
	}

	/** Writing a job and setting up benders. What the disk refuses is said, and what was typed stays on the screen. */
	private work(home: HomeState, step: WorkshopStep): void {
		const done = (result: Done) => {
			if ('home' in result) this.set({ view: 'home', home: result.home });
			else this.home({ page: 'home' }, result.over);
		};
		const failed = (error: unknown) => {
			if (exitCodeOf(error) === null) this.fail(error);
			else this.set({ view: 'home', home: { ...home, message: { kind: 'wrong', text: messageOf(error) } } });
		};
		try {
			const now = this.workshop.atOnce(home, step);
			if (now !== null) done(now);
			else {
				this.set({ view: 'waiting' });
				this.workshop.step(home, step).then(done, failed);
			}
		} catch (error) {
			failed(error);
		}
	}

	private read(home: HomeState, title: string, lines: () => readonly string[]): void {
		try {
			this.set({ view: 'reader', reader: { title, lines: lines(), top: 0 }, home: { ...home, message: null } });
		} catch (error) {
			if (exitCodeOf(error) === null) this.fail(error);
			else this.set({ view: 'home', home: { ...home, message: { kind: 'wrong', text: messageOf(error) } } });
		}
	}

	private open(target: string, resume: boolean): void {
		this.set({ view: 'waiting' });
		this.port.openSession(target, resume).then(
			(live) => {
				this.live = live;
				this.set({ view: 'session', session: opened(live, { ...USUAL_DISPLAY, ...this.display.kept() }) });
			},
			(error: unknown) => {
				// Started for this one job there is nowhere to go back to: the command line says what is wrong.
				if (this.direct || exitCodeOf(error) === null) this.fail(error);
				else this.home({ page: 'home' }, { kind: 'wrong', text: messageOf(error) });
			},
		);
	}
}

/** Long enough for the frame before it to be on the screen, short enough for nobody to have picked anything. */
const CHECK_AFTER_MS = 30;

/** The exit code that an expected failure carries; null for an error of the program's own. */
function exitCodeOf(error: unknown): number | null {
	const code = error instanceof Error && 'exitCode' in error ? error.exitCode : null;
	return typeof code === 'number' ? code : null;
}

function messageOf(error: unknown): string {
	return error instanceof Error ? error.message : String(error);
}
