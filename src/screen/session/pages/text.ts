import { LONGEST_NAME, nameWillDo } from '../../../tube/names.ts';
import { foreignName } from '../../../words/foreign.ts';
import { wrapped } from '../../text/line.ts';
import type { Page, SessionState, Step } from '../session-state.ts';
import { answer, BACK, type PageView } from './page.ts';

/** The folder in which the session goes on, since its own disk refuses: the one that is offered, or another. */
export function rescuePage(): PageView {
	return {
		title: 'Go on in another folder',
		prompt: {
			label: 'Folder',
			text: (folder) =>
				folder === '' ? 'Write a folder on another disk, for example /media/stick.' : { step: 'rescue', folder },
			back: BACK,
			empty: '',
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(
					'Press Enter to take this folder, or write another. The log with all its lines is copied there, and the session goes on in it. When the disk is well again, resuming brings the lines back.',
					room.columns,
				),
			},
		],
	};
}

/** The heat of the tube in hand, where it is not the one that is taken for it. */
export function heatPage({ heat }: SessionState, from: Page): PageView {
	return {
		title: 'Heat or certificate number',
		prompt: {
			label: 'Heat, lot or certificate number',
			text: (text) =>
				nameWillDo(text)
					? answer({ do: 'heat', heat: text })
					: `Write the number as it stands on the tube, at most ${LONGEST_NAME} characters; / goes back.`,
			back: { label: 'back', step: { step: 'page', page: from } },
			empty: '',
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(
					`${heat === null ? 'None is told yet.' : `Now ${foreignName(heat)}.`} It is kept with this tube, and taken for the pieces after it.`,
					room.columns,
				),
			},
		],
	};
}

/** Free text: a note, or why the tube is scrap. */
export function textPage(purpose: 'note' | 'scrap'): PageView {
	const note = purpose === 'note';
	return {
		title: note ? 'Note' : 'Scrap the tube',
		prompt: {
			label: note ? 'Note' : 'Why is it scrap?',
			text: (text) => {
				if (note) return text === '' ? 'Write the note first; / goes back.' : said(text);
				// A reading that was typed on the wrong page is no reason.
				if (!/\p{L}/u.test(text)) return 'Say why in a few words, not by a number; / goes back.';
				return { step: 'page', page: { page: 'scrap', why: text } };
			},
			back: BACK,
			empty: '',
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(
					note
						? 'It is kept in the log with the time. The question that is open stays open.'
						: 'The session ends with it. Its readings are kept.',
					room.columns,
				),
			},
		],
	};
}

function said(note: string): Step {
	return { step: 'answer', answer: { action: null, note } };
}

/** Giving up a tube is asked once more: nothing follows it. */
export function scrapPage(why: string): PageView {
	return {
		title: 'Scrap the tube?',
		prompt: {
			label: '',
			plus: { label: 'scrap the tube', step: answer({ do: 'scrap', why }) },
			back: BACK,
			empty: 'Press + to scrap the tube, / to go back.',
		},
		body: (room) => [{ rank: 0, lines: wrapped(`Why: ${why}`, room.columns, 'alert', 2) }],
	};
}
