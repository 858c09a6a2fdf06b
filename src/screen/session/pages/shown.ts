import { lengthsOf, nextLengths } from '../../../words/lengths.ts';
import { CHOOSE_OR_BACK, KEY_SAYS } from '../../../words/screen/usual.ts';
import { SESSION_HELP, SHOWN } from '../../../words/session/help.ts';
import { TOPIC_NAMES } from '../../../words/topics/topic-names.ts';
import type { Choice } from '../../shell/prompt.ts';
import { TOPICS_HERE } from '../../shell/topic-reader.ts';
import type { Page, SessionState, SessionStep } from '../session-state.ts';
import type { PageView } from './page.ts';

/** What can be shown, and heard, otherwise; it is kept for the next session. */
export function shownPage({ display, job }: SessionState, from: Page): PageView {
	const lengths = nextLengths(job);
	const shown = (
		label: string,
		changes: Extract<SessionStep, { step: 'display' }>['changes'],
	): Choice<SessionStep> => ({
		label,
		step: { step: 'display', changes },
	});
	return choosing(SHOWN.title, from, [
		shown(SHOWN.lengths(lengths, lengthsOf(job)), { lengths }),
		shown(SHOWN.mark(!display.fromStart), { fromStart: !display.fromStart }),
		shown(SHOWN.checklist(!display.checklist), { checklist: !display.checklist }),
		shown(SHOWN.bell(!display.bell), { bell: !display.bell }),
	]);
}

/** The topics of help, to be read without leaving the session. */
export function topicsPage(from: Page): PageView {
	return choosing(
		SESSION_HELP.topics,
		from,
		TOPICS_HERE.map((name) => ({ label: TOPIC_NAMES[name], step: { step: 'topic', name } })),
	);
}

function choosing(title: string, from: Page, choices: readonly Choice<SessionStep>[]): PageView {
	return {
		title,
		prompt: {
			label: SESSION_HELP.label,
			choices,
			back: { label: KEY_SAYS.back, step: { step: 'page', page: { page: 'help', from } } },
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}
