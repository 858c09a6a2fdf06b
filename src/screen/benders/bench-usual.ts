import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice } from '../shell/prompt.ts';
import type { BenchPage } from './bench-page.ts';

/** What the pages of benders and dies have in common. */

export function to(at: BenchPage): HomeStep {
	return { step: 'bench', at };
}

export const HOME: HomeStep = { step: 'page', page: { page: 'home' } };
const CHOOSE = 'Write the number of a choice and press Enter; / goes back.';
const MORE = { label: 'more', step: to({ bench: 'more' }) } as const;
const HELP_PAGE = to({ bench: 'help' });

export function chosen(title: string, choices: readonly Choice<HomeStep>[], back: HomeStep): HomeView {
	return {
		title,
		prompt: { label: 'Number of your choice', choices, star: MORE, back: { label: 'back', step: back }, empty: CHOOSE },
		keys: [['h', 'help']],
		shortcuts: { h: HELP_PAGE, '?': HELP_PAGE },
		body: () => [],
	};
}

/** The page of a bender's or a die's own. */
export function homeOf(bender: string, die: string | null): BenchPage {
	return die === null ? { bench: 'bender', bender } : { bench: 'die', bender, die };
}
