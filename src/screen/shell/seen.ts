import type { HomeView } from '../home/home-view.ts';
import { homeView } from '../home/pages/index.ts';
import { viewOf } from '../session/pages/index.ts';
import type { PageView } from '../session/pages/page.ts';
import type { AppState } from './app-state.ts';

/** What is on the screen, with the view of it. Both the keys and the frame go by this one view. */
export type Seen =
	| (Extract<AppState, { view: 'home' }> & { shown: HomeView })
	| (Extract<AppState, { view: 'session' }> & { shown: PageView })
	| Extract<AppState, { view: 'reader' | 'waiting' }>;

/** The state with its view, made once for all that look at it. */
export function seen(state: AppState): Seen {
	switch (state.view) {
		case 'home':
			return { ...state, shown: homeView(state.home) };
		case 'session':
			return { ...state, shown: viewOf(state.session) };
		default:
			return state;
	}
}
