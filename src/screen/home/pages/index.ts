import type { HomeState } from '../home-state.ts';
import type { HomeView } from '../home-view.ts';
import { homeHelpPage } from './help.ts';
import { homeMorePage, homePage } from './home.ts';
import { jobPage, offerPage } from './job.ts';

/** What a page outside of a session shows and what it takes from the keyboard. */
export function homeView(state: HomeState): HomeView {
	const { page } = state;
	switch (page.page) {
		case 'home':
			return homePage(state);
		case 'offer':
			return offerPage(page.job);
		case 'job':
			return jobPage(state, page.path);
		case 'review':
			return page.view(state, page.at, page.opened, page.list);
		case 'help':
			return homeHelpPage(page.from);
		case 'more':
			return homeMorePage(state, page.from);
		case 'form':
			return page.view(page.form, state.entry);
		case 'bench':
			return page.view(page.at, page.benders);
	}
}
