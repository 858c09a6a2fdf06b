import type { HomePage } from '../home-state.ts';
import type { HomeView } from '../home-view.ts';
import { wrapped } from '../line.ts';

const HELP = [
	'Pick with a number and Enter, or with the arrow keys and Enter. The numeric pad is enough.',
	'Letters search the list as they are typed; Backspace takes one off, / shows all again.',
	'+ goes on with the session that was interrupted last, at the very question that was open.',
	'A job that is picked can be bent as drawn, as its opposite part, or from its other end; it can be changed and copied.',
	'* writes a new job, one question at a time, while the drawing and the marks grow.',
	'Every answer in a session is on the disk before the next question. Ctrl-C leaves at once, Ctrl-Z pauses: nothing is lost.',
	'Without colours: NO_COLOR=1 or --no-color. For a screen reader: pullbook bend JOB --lines.',
] as const;

export function helpPage(from: HomePage): HomeView {
	return {
		title: 'Help',
		prompt: { label: '', back: { label: 'back', step: { step: 'page', page: from } }, empty: 'Press / to go back.' },
		body: ({ columns }) => HELP.map((text) => ({ rank: 0, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
