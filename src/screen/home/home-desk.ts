import type { BentAs } from '../../tube/job.ts';
import { errorWords } from '../../words/error.ts';
import { BENDERS_TITLE, sessionTitle, toPrintWords } from '../../words/screen/home.ts';
import type { TopicName } from '../../words/topics/topic-names.ts';
import type { Message } from '../session/session-state.ts';
import { type AppState, exitCodeOf } from '../shell/app-state.ts';
import type { Key } from '../shell/keys.ts';
import { newerDamaged, offerPageOf } from '../shell/opening.ts';
import type { Seen } from '../shell/seen.ts';
import { topicReader } from '../shell/topic-reader.ts';
import type { HomePort, JobRow } from './home-port.ts';
import { type HomeReduced, homeKey, homeText, homeTextEntered } from './home-reducer.ts';
import { Reviewing, type ReviewStep } from './home-review.ts';
import { type HomeState, homeState, turnedTo } from './home-state.ts';
import type { HomePage, HomeStep } from './home-view.ts';
import { type Done, Workshop, type WorkshopStep } from './home-workshop.ts';

/** Long enough for a frame of what is known already: a long log takes a while to be read. */
const OPEN_AFTER_MS = 20;

/** What the pages outside of a session need of the rest of the screen. */
export interface Screen {
	now(): AppState;
	set(state: AppState): void;
	open(target: string, resume: boolean, as?: BentAs): void;
	end(exitCode: number): void;
	columns(): number;
	fail(error: unknown): void;
}

type SeenHome = Extract<Seen, { view: 'home' }>;

/** Long enough for the frame before it to be on the screen, short enough for nobody to have picked anything. */
const CHECK_AFTER_MS = 30;

/** Does what is asked for outside of a session: pages, reviews, jobs that are written, benders. */
export class HomeDesk {
	private readonly workshop: Workshop;
	private readonly reviewing: Reviewing;
	private checking: NodeJS.Timeout | undefined;
	private opening: NodeJS.Timeout | undefined;
	private saved: string | null = null;

	constructor(
		private readonly port: HomePort,
		private readonly screen: Screen,
	) {
		this.workshop = new Workshop(port);
		this.reviewing = new Reviewing(port);
	}

	/** Shows a page as the disk now has it. */
	show(page: HomePage = { page: 'home' }, message: Message | null = null): void {
		this.set(homeState(this.port, page, message));
		this.close();
		// Only when the page has been drawn: one sees the jobs at once, and what is wrong with one a moment later.
		if (this.port.checkedJobs !== undefined) this.checking = setTimeout(this.check, CHECK_AFTER_MS);
	}

	key({ home, shown }: SeenHome, key: Key): void {
		this.follow(home, homeKey(home, shown, key));
	}

	text({ home, shown }: SeenHome, value: string): void {
		this.follow(home, homeText(home, shown, value));
	}

	textEntered({ home, shown }: SeenHome): void {
		this.follow(home, homeTextEntered(home, shown));
	}

	/** Nothing is looked at any more. */
	close(): void {
		clearTimeout(this.checking);
		clearTimeout(this.opening);
	}

	/** The job that was written last comes first in the list: it is the one that is wanted. */
	private set(home: HomeState): void {
		const isSaved = ({ path }: JobRow) => path === this.saved;
		const jobs = [...home.jobs.filter(isSaved), ...home.jobs.filter((job) => !isSaved(job))];
		this.screen.set({ view: 'home', home: { ...home, jobs } });
	}

	private follow(home: HomeState, reduced: HomeReduced): void {
		if ('home' in reduced) this.set(reduced.home);
		else this.step(home, reduced.step);
	}

	private readonly check = (): void => {
		const state = this.screen.now();
		if (state.view !== 'home') return;
		this.tried(state.home, () => this.set(this.checked(state.home)));
	};

	private checked(home: HomeState): HomeState {
		return { ...home, jobs: this.port.checkedJobs?.() ?? home.jobs };
	}

	private step(home: HomeState, step: HomeStep): void {
		switch (step.step) {
			case 'page':
				if (step.page.page === 'home') this.show();
				else this.set(turnedTo(home, step.page));
				break;
			case 'again':
				this.tried(home, () => this.set(this.checked(homeState(this.port, { page: 'job', path: step.path }))));
				break;
			case 'open':
				this.open(home, step);
				break;
			case 'review':
			case 'reviewed':
				this.review(home, step);
				break;
			case 'read':
				this.tried(home, () => this.reader(home, sessionTitle(step.id), this.port.review(step.id)));
				break;
			case 'learned':
				this.screen.set({ view: 'waiting' });
				this.port.benders().then(
					(lines) => this.reader(home, BENDERS_TITLE, lines),
					(error: unknown) => this.refused(home, error),
				);
				break;
			case 'topic':
				this.screen.set({ view: 'waiting' });
				this.topic(home, step.name).catch((error: unknown) => this.refused(home, error));
				break;
			case 'paper':
				this.print(home, () => this.port.printSheet(step.path, step.sample));
				break;
			case 'record':
				this.print(home, () => this.port.printRecord(step.id));
				break;
			case 'leave':
				this.screen.end(0);
				break;
			default:
				this.work(home, step);
		}
	}

	/** A session that a damaged log may be newer than is not gone on with before that was read. */
	private open(home: HomeState, { target, resume, as }: Extract<HomeStep, { step: 'open' }>): void {
		const left = resume && home.page.page !== 'offer' ? home.sessions.find(({ id }) => id === target) : undefined;
		const damaged = left === undefined ? null : newerDamaged(home.sessions, left);
		if (left === undefined || damaged === null) this.screen.open(target, resume, as);
		else this.set(turnedTo(home, offerPageOf(left), damaged));
	}

	/** Writing a job and setting up benders. What the disk refuses is said, and what was typed stays on the screen. */
	private work(home: HomeState, step: WorkshopStep): void {
		const done = (result: Done) => {
			if ('home' in result) this.set(result.home);
			else {
				this.saved = result.saved ?? this.saved;
				this.show({ page: 'home' }, result.over);
			}
		};
		this.tried(home, () => {
			const now = this.workshop.atOnce(home, step);
			if (now !== null) done(now);
			else {
				this.screen.set({ view: 'waiting' });
				this.workshop.step(home, step).then(done, (error: unknown) => this.refused(home, error));
			}
		});
	}

	/** Kept sessions; the log that cannot be read is said on the page that it was chosen on. */
	private review(home: HomeState, step: ReviewStep): void {
		const open = () =>
			this.reviewing.step(home, step).then(
				(next) => this.set(next),
				(error: unknown) => this.refused(home, error),
			);
		this.tried(home, () => {
			const now = this.reviewing.atOnce(home, step);
			if (now !== null) this.set(now);
			else {
				this.screen.set({ view: 'waiting', ...this.reviewing.before(home, step) });
				this.opening = setTimeout(open, OPEN_AFTER_MS);
			}
		});
	}

	private print(home: HomeState, pdf: () => Promise<string>): void {
		this.screen.set({ view: 'waiting' });
		pdf().then(
			(file) => this.set({ ...home, message: { kind: 'said', text: toPrintWords(file) } }),
			(error: unknown) => this.refused(home, error),
		);
	}

	private async topic(home: HomeState, name: TopicName): Promise<void> {
		const reader = await topicReader(name, this.screen.columns());
		this.screen.set({ view: 'reader', reader, back: { view: 'home', home: { ...home, message: null } } });
	}

	private reader(home: HomeState, title: string, lines: readonly string[]): void {
		const back = { view: 'home' as const, home: { ...home, message: null } };
		this.screen.set({ view: 'reader', reader: { title, lines, top: 0 }, back });
	}

	private tried(home: HomeState, what: () => void): void {
		try {
			what();
		} catch (error) {
			this.refused(home, error);
		}
	}

	/** What is expected to fail says why, on the page as it was. */
	private refused(home: HomeState, error: unknown): void {
		if (exitCodeOf(error) === null) this.screen.fail(error);
		else this.set({ ...home, message: { kind: 'wrong', text: errorWords(error) } });
	}
}
