import { CHOOSE_OR_BACK, KEY_SAYS } from '../../../words/screen/usual.ts';
import { keysInHelp, pageHelp, SESSION_HELP } from '../../../words/session/help.ts';
import type { Choice } from '../../shell/prompt.ts';
import { line, wrapped } from '../../text/line.ts';
import type { Page, SessionState, SessionStep } from '../session-state.ts';
import { type PageView, ROOMY_ROWS } from './page.ts';

/** What the page from which help was asked is about, the keys, and what can be shown otherwise. */
export function helpPage(state: SessionState, from: Page): PageView {
	return {
		title: SESSION_HELP.title,
		prompt: {
			label: SESSION_HELP.label,
			choices: helpChoices(from),
			back: { label: KEY_SAYS.back, step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: (room) => [
			{ rank: 0, lines: wrapped(pageHelp(from.page, state.ask?.ask ?? null), room.columns) },
			{ rank: 1, lines: keysInHelp(room.window < ROOMY_ROWS).map((text) => line(text)) },
			{ rank: 2, extra: room.window < ROOMY_ROWS, lines: wrapped(SESSION_HELP.numbers, room.columns) },
		],
	};
}

function helpChoices(from: Page): Choice<SessionStep>[] {
	const { shown, layout, topics } = SESSION_HELP.choices;
	return [
		{ label: shown, step: { step: 'page', page: { page: 'shown', from } } },
		{ label: layout, step: { step: 'page', page: { page: 'layout' } } },
		{ label: topics, step: { step: 'page', page: { page: 'topics', from } } },
	];
}
