import { LONGEST_NAME, nameWillDo } from '../../../tube/names.ts';
import { KEY_SAYS } from '../../../words/screen/usual.ts';
import { HEAT, NOTE, RESCUE, SCRAP, SCRAP_SURE } from '../../../words/session/text.ts';
import { wrapped } from '../../text/line.ts';
import type { Page, SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, type PageView } from './page.ts';

/** The folder in which the session goes on, since its own disk refuses: the one that is offered, or another. */
export function rescuePage(): PageView {
	return {
		title: RESCUE.title,
		prompt: {
			label: RESCUE.label,
			text: (folder) => (folder === '' ? RESCUE.empty : { step: 'rescue', folder }),
			path: true,
			back: BACK,
			empty: '',
		},
		body: (room) => [{ rank: 0, lines: wrapped(RESCUE.what, room.columns) }],
	};
}

/** The heat of the tube in hand, where it is not the one that is taken for it. */
export function heatPage({ heat }: SessionState, from: Page): PageView {
	return {
		title: HEAT.title,
		prompt: {
			label: HEAT.label,
			text: (text) => (nameWillDo(text) ? answer({ do: 'heat', heat: text }) : HEAT.wrong(LONGEST_NAME)),
			back: { label: KEY_SAYS.back, step: { step: 'page', page: from } },
			empty: '',
		},
		body: (room) => [{ rank: 0, lines: wrapped(HEAT.now(heat), room.columns) }],
	};
}

/** Free text: a note, or why the tube is scrap. */
export function textPage(purpose: 'note' | 'scrap'): PageView {
	const note = purpose === 'note';
	const { title, label, what } = note ? NOTE : SCRAP;
	return {
		title,
		prompt: {
			label,
			text: (text) => {
				if (note) return text === '' ? NOTE.empty : said(text);
				// A reading that was typed on the wrong page is no reason.
				return /\p{L}/u.test(text) ? { step: 'page', page: { page: 'scrap', why: text } } : SCRAP.wrong;
			},
			back: BACK,
			empty: '',
		},
		body: (room) => [{ rank: 0, lines: wrapped(what, room.columns) }],
	};
}

function said(note: string): SessionStep {
	return { step: 'answer', answer: { action: null, note } };
}

/** Giving up a tube is asked once more: nothing follows it. */
export function scrapPage(why: string): PageView {
	return {
		title: SCRAP_SURE.title,
		prompt: {
			label: '',
			plus: { label: SCRAP_SURE.plus, step: answer({ do: 'scrap', why }) },
			back: BACK,
			empty: SCRAP_SURE.empty,
		},
		body: (room) => [{ rank: 0, lines: wrapped(SCRAP_SURE.why(why), room.columns, 'alert', 2) }],
	};
}
