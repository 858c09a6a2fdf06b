import { clamp } from '../../maths/scalar.ts';
import type { CorrectionStory, Story } from '../../review/story.ts';
import { bendName } from '../../words/bend-name.ts';
import { LONG_PAGE, nextPage, ONLY_PLUS_OR_BACK, PAGE_NAMES } from '../../words/review/pages.ts';
import { READER_KEYS } from '../../words/screen/frame.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { KeyHint } from '../text/key-line.ts';
import { type Line, span, type Tone, wrapped } from '../text/line.ts';
import { PLOTS, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';

export const toReview = (at: ReviewPage): HomeStep => ({ step: 'reviewed', at });

/** The pages of one session's story, in the order in which it is read. */
export function chapters({ story }: Opened): ReviewPage[] {
	return [
		{ review: 'story' },
		...story.bends.map(({ bend }): ReviewPage => ({ review: 'bend', bend, top: 0 })),
		...(changingCorrections(story).length > 0 ? [{ review: 'corrections', top: 0 } as const] : []),
		{ review: 'checks', top: 0 },
		{ review: 'tube', across: 0, over: 0, enlarged: false },
		{ review: 'line', at: 0 },
		{ review: 'plot', plot: PLOTS[0] },
		{ review: 'taught', top: 0 },
	];
}

/** The corrections that changed numbers of bends to come: after the last bend there is none left. */
export const changingCorrections = ({ corrections }: Pick<Story, 'corrections'>): CorrectionStory[] =>
	corrections.filter(({ correction }) => correction.remaining.length > 0);

export const pageName = (at: ReviewPage): string => (at.review === 'bend' ? bendName(at.bend) : PAGE_NAMES[at.review]);

function isSameChapter(a: ReviewPage, b: ReviewPage): boolean {
	return a.review === b.review && (a.review !== 'bend' || (b.review === 'bend' && a.bend === b.bend));
}

/** The page that follows in the story; after the last one the first. */
export function nextChapter(at: ReviewPage, opened: Opened): ReviewPage {
	const all = chapters(opened);
	const index = all.findIndex((each) => isSameChapter(each, at));
	return all[(index + 1) % all.length]!;
}

/** Keys that every page of a session has: on in the story, back to its first page, help. */
export function usual(at: ReviewPage, opened: Opened): Pick<HomeView, 'prompt' | 'shortcuts' | 'where'> {
	const next = nextChapter(at, opened);
	const help = toReview({ review: 'help', from: at });
	return {
		where: [opened.story.view.job.name, opened.started.slice(0, 16)],
		prompt: {
			label: '',
			plus: { label: nextPage(pageName(next)), step: toReview(next) },
			star: { label: KEY_SAYS.more, step: toReview({ review: 'more', from: at }) },
			back: { label: KEY_SAYS.back, step: toReview({ review: 'story' }) },
			empty: ONLY_PLUS_OR_BACK,
		},
		shortcuts: { h: help, '?': help },
	};
}

export const HELP_KEY: KeyHint = ['h', KEY_SAYS.help];

type LongPage = Extract<ReviewPage, { top: number }>;

/** The keys that move through a page longer than the screen, by arrows and by the pad. */
export function scrolled(at: LongPage, count: number): Pick<HomeView, 'keys' | 'moves'> {
	const moved = (by: number) => toReview({ ...at, top: clamp(at.top + by, 0, Math.max(0, count - 1)) });
	const [up, down] = [moved(-1), moved(1)];
	return {
		keys: [['2 8', READER_KEYS.line], HELP_KEY],
		moves: { up, down, '8': up, '2': down, pageUp: moved(-10), pageDown: moved(10), home: moved(-count) },
	};
}

/** A text behind the number of its line in the log. */
export function numberedLines(entry: number, text: string, columns: number, tone: Tone = 'plain'): Line[] {
	return wrapped(text, columns - NUMBER_COLUMNS, tone).map((parts, i) => [
		span(i === 0 ? `${String(entry).padStart(NUMBER_COLUMNS - 2)}  ` : ' '.repeat(NUMBER_COLUMNS), 'quiet'),
		...parts,
	]);
}

const NUMBER_COLUMNS = 6;

/** So many of the lines as there are rows, from `top` on; what is left out is counted. */
export function windowOf(lines: readonly Line[], top: number, rows: number): Line[] {
	if (lines.length <= rows) return [...lines];
	const room = Math.max(1, rows - 2);
	const from = Math.min(top, lines.length - room);
	const more = (count: number, where: 'above' | 'below'): Line => [span(LONG_PAGE.left(count, where), 'quiet')];
	return [more(from, 'above'), ...lines.slice(from, from + room), more(lines.length - from - room, 'below')];
}
