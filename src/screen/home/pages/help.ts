import { HOME_HELP } from '../../../words/screen/home.ts';
import { CHOOSE_OR_BACK, KEY_SAYS } from '../../../words/screen/usual.ts';
import { TOPIC_NAMES } from '../../../words/topics/topic-names.ts';
import { TOPICS_HERE } from '../../shell/topic-reader.ts';
import { line, wrapped } from '../../text/line.ts';
import type { HomePage, HomeView } from '../home-view.ts';

export function homeHelpPage(from: HomePage): HomeView {
	return {
		title: HOME_HELP.title,
		prompt: {
			label: HOME_HELP.label,
			choices: TOPICS_HERE.map((name) => ({ label: TOPIC_NAMES[name], step: { step: 'topic', name } })),
			back: { label: KEY_SAYS.back, step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: ({ columns }) => [
			{ rank: 0, lines: HOME_HELP.keys.map((text) => line(text)) },
			...HOME_HELP.said.map((text, at) => ({ rank: at + 1, lines: wrapped(text, columns, 'plain', 2) })),
		],
	};
}
