import type { ChangeDie } from '../../../session/protocol/facts/caution.ts';
import { dieWords, OTHER_DIE } from '../../../words/caution.ts';
import { wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { type PageView, STAR } from './page.ts';

/** Another die goes in before the tube is set. */
export function changeDiePage({ job }: SessionState, change: ChangeDie): PageView {
	return {
		title: change.from === null ? 'Put in the die' : 'Change the die',
		prompt: {
			label: '',
			plus: { label: 'it is in, go on', step: { step: 'next' } },
			star: STAR,
			empty: 'Press + when the die is in.',
		},
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(dieWords(change, job), columns, 'strong') },
			{ rank: 0, lines: wrapped(`! ${OTHER_DIE}`, columns, 'alert', 2) },
		],
	};
}
