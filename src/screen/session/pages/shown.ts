import { LENGTH_NAMES, lengthsOf, nextLengths } from '../../../words/lengths.ts';
import { CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { TOPIC_NAMES } from '../../../words/topics/names.ts';
import type { Choice } from '../../shell/prompt.ts';
import { TOPICS_HERE } from '../../shell/topic-reader.ts';
import type { Page, SessionState, Step } from '../session-state.ts';
import type { PageView } from './page.ts';

/** What can be shown, and heard, otherwise; it is kept for the next session. */
export function shownPage({ display, job }: SessionState, from: Page): PageView {
	const lengths = nextLengths(job);
	const shown = (label: string, changes: Extract<Step, { step: 'display' }>['changes']): Choice<Step> => ({
		label,
		step: { step: 'display', changes },
	});
	return choosing('What is shown', from, [
		shown(`lengths in ${LENGTH_NAMES[lengths]} (now ${LENGTH_NAMES[lengthsOf(job)]})`, { lengths }),
		display.fromStart
			? shown('large mark from the far end, from bend 2 on', { fromStart: false })
			: shown('large mark from the start end, at every bend', { fromStart: true }),
		display.checklist ? shown('check list off', { checklist: false }) : shown('check list on', { checklist: true }),
		display.bell ? shown('bell off', { bell: false }) : shown('bell on', { bell: true }),
	]);
}

/** The topics of help, to be read without leaving the session. */
export function topicsPage(from: Page): PageView {
	return choosing(
		'Topics of help',
		from,
		TOPICS_HERE.map((name) => ({ label: TOPIC_NAMES[name], step: { step: 'topic', name } })),
	);
}

function choosing(title: string, from: Page, choices: readonly Choice<Step>[]): PageView {
	return {
		title,
		prompt: {
			label: 'Number of your choice, or / to go back',
			choices,
			back: { label: 'back', step: { step: 'page', page: { page: 'help', from } } },
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}
