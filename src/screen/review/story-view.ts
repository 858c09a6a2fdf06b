import type { Story } from '../../review/story.ts';
import { bentAsWords } from '../../words/bent-as.ts';
import { foreignName } from '../../words/foreign.ts';
import { PRINT_RECORD } from '../../words/review/pages.ts';
import { bendChoice, CHAPTER, cornerOffWords, STORY, storyOutcome, storyTube } from '../../words/review/story.ts';
import { sessionTitle } from '../../words/screen/home.ts';
import { CHOICE, KEY_SAYS } from '../../words/screen/usual.ts';
import { SIMULATED } from '../../words/session-list.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { TO_HOME } from '../home/pages/usual.ts';
import type { Section } from '../session/pages/page.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import type { ListAt, ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { changingCorrections, chapters, HELP_KEY, pageName, toReview, usual } from './usual.ts';

const AT: ReviewPage = { review: 'story' };

/** One session as a whole: what came of it, and its pages to turn to. */
export function storyView(opened: Opened, list: ListAt | undefined): HomeView {
	const { story, id } = opened;
	const own = usual(AT, opened);
	const pages = chapters(opened).slice(1);
	return {
		...own,
		title: sessionTitle(foreignName(id)),
		keys: [HELP_KEY, ['p', PRINT_RECORD]],
		shortcuts: { ...own.shortcuts, p: { step: 'record', id } },
		prompt: {
			...own.prompt,
			label: CHOICE,
			choices: [
				...pages.map((at): Choice<HomeStep> => ({ ...chapterWords(at, opened), step: toReview(at) })),
				{ label: STORY.text, step: { step: 'read', id } },
			],
			back: list === undefined ? TO_HOME : { label: KEY_SAYS.back, step: toReview(list) },
			empty: STORY.empty,
		},
		body: ({ columns }) => body(opened, story, columns),
	};
}

function body({ problem }: Opened, story: Story, columns: number): Section[] {
	const { view } = story;
	const { job } = view;
	const as = bentAsWords(job);
	const { short, end } = storyOutcome(story);
	const corner = cornerOffWords(story);
	return [
		{ rank: 0, lines: problem === null ? [] : wrapped(`! ${problem}`, columns, 'wrong', 2) },
		{ rank: 0, lines: view.simulated ? wrapped(SIMULATED, columns, 'alert') : [] },
		{ rank: 0, lines: [...wrapped(short, columns, 'strong'), ...(end === null ? [] : wrapped(end, columns))] },
		{ rank: 1, lines: corner === null ? [] : wrapped(corner, columns) },
		{ rank: 2, lines: wrapped(storyTube(view), columns, 'quiet') },
		{ rank: 2, lines: as === null ? [] : wrapped(as, columns, 'alert') },
	];
}

/** What a page of the story holds; `brief`: where that has no room on one line. */
function chapterWords(at: ReviewPage, { story, states }: Opened): Pick<Choice<HomeStep>, 'label' | 'brief'> {
	switch (at.review) {
		case 'bend':
			return bendChoice(story.bends[at.bend - 1]!);
		case 'corrections':
			return { label: CHAPTER.corrections(changingCorrections(story).length) };
		case 'checks':
			return { label: CHAPTER.checks(story) };
		case 'tube':
			return { label: CHAPTER.tube };
		case 'line':
			return { label: CHAPTER.line(states.length - 1) };
		case 'plot':
			return { label: CHAPTER.plots, brief: pageName(at) };
		case 'taught':
			return { label: CHAPTER.taught };
		default:
			return { label: pageName(at) };
	}
}
