import { KEY_SAYS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { BenchPage } from './bench-page.ts';

/** What the pages of benders and dies have in common. */

export function toBench(at: BenchPage): HomeStep {
	return { step: 'bench', at };
}

export const TO_JOBS: HomeStep = { step: 'page', page: { page: 'home' } };

/** The page with the keys that all of them have: help, and for a pad what else there is. In free text a letter is a letter. */
export function withKeys(from: BenchPage, view: HomeView): HomeView {
	if (view.prompt.text !== undefined || from.bench === 'help') return view;
	const help = toBench({ bench: 'help', from });
	const more = { star: { label: KEY_SAYS.more, step: toBench({ bench: 'more', from }) } };
	return {
		...view,
		prompt: { ...view.prompt, ...(from.bench === 'more' ? {} : more) },
		keys: [['h', KEY_SAYS.help]],
		shortcuts: { h: help, '?': help },
	};
}

/** The page of a bender's or a die's own. */
export function benchPageOf(bender: string, die: string | null): BenchPage {
	return die === null ? { bench: 'bender', bender } : { bench: 'die', bender, die };
}
