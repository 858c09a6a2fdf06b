import { wrapped } from '../line.ts';
import { BACK, type PageView } from './page.ts';

/** Free text: a note, or why the tube is scrap. */
export function textPage(purpose: 'note' | 'scrap'): PageView {
	const note = purpose === 'note';
	return {
		title: note ? 'Note' : 'Scrap the tube',
		prompt: {
			label: note ? 'Note' : 'Why is it scrap?',
			text: (text) => {
				if (text === '')
					return note ? 'Write the note first; Esc goes back.' : 'Say in a few words why; Esc goes back.';
				return { step: 'answer', answer: note ? { action: null, note: text } : { action: { do: 'scrap', why: text } } };
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
						: 'The session ends with it. What the tube taught about springback is kept.',
					room.columns,
				),
			},
		],
	};
}
