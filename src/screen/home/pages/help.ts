import { CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { TOPIC_NAMES } from '../../../words/topics/names.ts';
import { TOPICS_HERE } from '../../shell/topic-reader.ts';
import { wrapped } from '../../text/line.ts';
import type { HomePage, HomeView } from '../home-view.ts';

/** The most needed first: a small window drops the last. */
const HELP = [
	'Pick with a number and Enter, or with the arrow keys and Enter. The numeric pad is enough.',
	'+ goes on with the session that was interrupted last, at the question that was open.',
	'* has the rest: a new job, benders, kept sessions. Letters search the list; / shows all again.',
	'Every answer in a session is on disk before the next question. Ctrl-C leaves at once: nothing is lost.',
	'Without a screen: pullbook bend JOB --lines. pullbook help line-mode tells how.',
] as const;

export function homeHelpPage(from: HomePage): HomeView {
	return {
		title: 'Help',
		prompt: {
			label: 'Number of your choice, or / to go back',
			choices: TOPICS_HERE.map((name) => ({ label: TOPIC_NAMES[name], step: { step: 'topic', name } })),
			back: { label: 'back', step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: ({ columns }) => HELP.map((text, rank) => ({ rank, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
