import { REVIEW_HELP } from '../../words/review/pages.ts';
import type { HomeView, KeptSessions } from '../home/home-view.ts';
import { helpView } from '../home/plain-views.ts';
import { bendView, correctionsView } from './bend-view.ts';
import { checksView } from './checks-view.ts';

import { lineView } from './line-view.ts';
import { narrowView, sessionListView } from './list-view.ts';
import { reviewMoreView } from './more-view.ts';
import { plotView } from './plot-view.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { storyView } from './story-view.ts';
import { taughtView } from './taught-view.ts';
import { tubeView } from './tube-view.ts';
import { toReview } from './usual.ts';

/** The page of the review that is open. `opened`: the session that is looked at, null in the list; `list`: where it was chosen. */
export function reviewView(kept: KeptSessions, at: ReviewPage, opened: Opened | null, list?: ListAt): HomeView {
	if (at.review === 'list') return sessionListView(kept, at);
	if (at.review === 'narrow') return narrowView(kept, at);
	if (at.review === 'help') return helpView(REVIEW_HELP, toReview(at.from));
	if (at.review === 'more') return reviewMoreView(at, opened, list);
	if (opened === null) return sessionListView(kept, list ?? LIST);
	switch (at.review) {
		case 'story':
			return storyView(opened, list);
		case 'bend':
			return bendView(opened, at);
		case 'corrections':
			return correctionsView(opened, at);
		case 'checks':
			return checksView(opened, at);
		case 'taught':
			return taughtView(opened, at);
		case 'tube':
			return tubeView(opened, at);
		case 'line':
			return lineView(opened, at);
		case 'plot':
			return plotView(opened, at);
	}
}
