import type { ChangeDie } from '../../../session/protocol/facts/caution.ts';
import { dieWords, OTHER_DIE } from '../../../words/caution.ts';
import { CHANGE_DIE } from '../../../words/session/start.ts';
import { wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { type PageView, STAR } from './page.ts';

/** Another die goes in before the tube is set. */
export function changeDiePage({ job }: SessionState, change: ChangeDie): PageView {
	return {
		title: CHANGE_DIE.title(change.from === null),
		prompt: {
			label: '',
			plus: { label: CHANGE_DIE.plus, step: { step: 'next' } },
			star: STAR,
			empty: CHANGE_DIE.empty,
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(dieWords(change, job), columns, 'strong') },
			{ rank: 0, lines: wrapped(`! ${OTHER_DIE}`, columns, 'alert', 2) },
		],
	};
}
