import { taughtBy } from '../../review/taught.ts';
import { tellsMostOf, verdictOf } from '../../session/report/verdict.ts';
import { TAUGHT_TITLE } from '../../words/review/pages.ts';
import { NEXT_TIME, nextTimeWords, SHOWED, showedWords } from '../../words/taught.ts';
import { invitation } from '../../words/verdict.ts';
import type { HomeView } from '../home/home-view.ts';
import { EMPTY, type Line, line, wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { scrolled, usual, windowOf } from './usual.ts';

/** What the tube told of the machine, and what to do otherwise at the next one. */
export function taughtView(opened: Opened, at: Extract<ReviewPage, { review: 'taught' }>): HomeView {
	const [showed, next] = taughtTexts(opened.story);
	return {
		...usual(at, opened),
		...scrolled(at, showed.length + next.length),
		title: TAUGHT_TITLE,
		body: ({ columns, rows }) => {
			const told = (sentences: readonly string[]): Line[] =>
				sentences.flatMap((sentence) => wrapped(sentence, columns, 'plain', 2));
			const lines = [line(SHOWED, 'quiet'), ...told(showed), EMPTY, line(NEXT_TIME, 'quiet'), ...told(next)];
			return [{ rank: 0, lines: windowOf(lines, at.top, rows) }];
		},
	};
}

function taughtTexts({ state, view }: Opened['story']): readonly [showed: string[], next: string[]] {
	const taught = taughtBy(state);
	const verdict = view.status === 'done' ? verdictOf(state) : null;
	const invited = verdict && invitation(verdict.fits, verdict.chance, tellsMostOf(state, verdict));
	return [showedWords(taught), nextTimeWords(taught, invited)];
}
