import { foreignName } from '../../words/foreign.ts';
import { sessionTitle } from '../../words/screen/home.ts';
import type { HomePort } from './home-port.ts';
import { type HomeState, turnedTo } from './home-state.ts';
import type { HomePage, HomeStep } from './home-view.ts';
import { keptChoice } from './pages/kept.ts';

/** The steps that this does: those that look at kept sessions. */
export type ReviewStep = Extract<HomeStep, { step: 'review' | 'reviewed' }>;

type ReviewHome = Extract<HomePage, { page: 'review' }>;

/** Turns the pages of kept sessions. What draws them is loaded when first wanted. */
export class Reviewing {
	private drawing: typeof import('../review/index.ts') | null = null;

	constructor(private readonly port: HomePort) {}

	/** @throws what reading the log said, with its `exitCode` */
	async step(home: HomeState, step: ReviewStep): Promise<HomeState> {
		this.drawing ??= await import('../review/index.ts');
		return this.now(this.drawing, home, step);
	}

	/** The same at once where nothing needs loading or reading: keys must not wait for a promise between two pages. */
	atOnce(home: HomeState, step: ReviewStep): HomeState | null {
		return this.drawing === null || step.step === 'review' ? null : this.now(this.drawing, home, step);
	}

	/** What is known of a session before its log has been read. */
	before({ sessions }: HomeState, step: ReviewStep): { title?: string; says?: string } {
		const row = step.step === 'review' ? sessions.find(({ id }) => id === step.id) : undefined;
		return row === undefined ? {} : { title: sessionTitle(foreignName(row.id)), says: keptChoice(row).label };
	}

	private now({ reviewView }: typeof import('../review/index.ts'), home: HomeState, step: ReviewStep): HomeState {
		const { page } = home;
		const before: Partial<ReviewHome> = page.page === 'review' ? page : {};
		if (step.step === 'review') {
			const opened = this.port.story(step.id);
			// Where the session was chosen one comes back to; the search is kept with it.
			const list = before.at?.review === 'list' ? { list: { ...before.at, search: home.search } } : {};
			return turnedTo(home, { page: 'review', at: { review: 'story' }, opened, view: reviewView, ...list });
		}
		const { at } = step;
		const { opened = null, list } = before;
		const next = turnedTo(home, { page: 'review', at, opened, view: reviewView, ...(list && { list }) });
		return at.review === 'list' ? { ...next, search: at.search } : next;
	}
}
