import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS, ONLY_BACK } from '../../words/screen/usual.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import type { HomeStep, HomeView } from './home-view.ts';

/** Pages outside of a session that have nothing but choices, or nothing but words. */

export function choicesView(title: string, choices: readonly Choice<HomeStep>[], back: HomeStep): HomeView {
	return {
		title,
		prompt: { label: CHOICE, choices, back: { label: KEY_SAYS.back, step: back }, empty: CHOOSE_OR_BACK },
		body: () => [],
	};
}

/** What a group of pages says in its help; where there is little room the last goes first. */
export function helpView({ title, said }: { title: string; said: readonly string[] }, back: HomeStep): HomeView {
	return {
		title,
		prompt: { label: '', back: { label: KEY_SAYS.back, step: back }, empty: ONLY_BACK },
		body: ({ columns }) => said.map((text, rank) => ({ rank, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
