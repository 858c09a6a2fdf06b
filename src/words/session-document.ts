import type { SessionView } from '../session/report/views.ts';
import { reasonWords } from './reason.ts';
import { withText } from './warnings.ts';

/** One kept session as `log ID --json` prints it: beside each fact the sentence made of it. Times are UTC. */
export function sessionDocument({ warnings, ...view }: SessionView): object {
	return {
		...view,
		bends: view.bends.map((bend) => ({
			...bend,
			pulls: bend.pulls.map(({ reason, ...pull }) => {
				return { ...pull, why: reason && reasonWords(reason, view.job), reason };
			}),
		})),
		notes: view.notes.map(({ of, text }) => (of === 'note' ? text : `Scrapped: ${text}`)),
		...(warnings && { warnings: warnings.map((warning) => withText(warning, view.job)) }),
	};
}
