import type { Size } from '../terminal/output.ts';
import { designGrowth, resolveShape } from '../tube/resolve.ts';
import { type Frame, frame } from './frame.ts';
import { type Line, line, wrapped } from './line.ts';
import type { Look } from './look.ts';
import { bendsOf, viewOf } from './pages/index.ts';
import type { Room, Section } from './pages/page.ts';
import { tubeDrawing } from './parts/tube-drawing.ts';
import type { Page, SessionState } from './session-state.ts';

/** Pages that are about the tube as it stands. */
const WITH_PICTURE: readonly Page['page'][] = ['ask', 'released', 'corrected', 'done'];

/** A session's screen. */
export function sessionFrame(state: SessionState, size: Size, look: Look): Frame {
	const { title, prompt, body } = viewOf(state);
	const picture = WITH_PICTURE.includes(state.page.page) ? { picture: pictureOf(state, look) } : {};
	const seen = (room: Room): Section[] => [...body(room), { rank: 0, lines: sight(state, room) }];
	const content = {
		title,
		where: where(state),
		body: seen,
		prompt,
		entry: state.entry,
		message: state.message,
		...picture,
	};
	return frame(content, size, look);
}

/** On a simulated bender the instruments are on the screen, wherever a number of theirs is asked for. */
function sight({ page, sight: text }: SessionState, { columns }: Room): Line[] {
	const asked = page.page === 'ask' || page.page === 'released' || page.page === 'least';
	return asked && text !== null ? wrapped(text, columns, 'good') : [];
}

function bendInHand({ ask, set }: SessionState): number | undefined {
	if (ask === null) return undefined;
	return 'bend' in ask && ask.bend !== undefined ? ask.bend : set?.bend;
}

function where(state: SessionState): string {
	const bend = bendInHand(state);
	return bend === undefined ? state.job.name : `${state.job.name} · bend ${bend} of ${bendsOf(state)}`;
}

function pictureOf(state: SessionState, { plain }: Look): (columns: number, rows: number) => Line[] {
	const bends = bendsOf(state);
	const now = bendInHand(state) ?? bends + 1;
	const words =
		now > bends ? 'as drawn, start end at the left' : `made, bend ${now} thick, to come dotted; start end at the left`;
	return (columns, rows) => {
		const shape = resolveShape(state.job, designGrowth(state.job));
		return [...tubeDrawing(shape, now, columns, rows - 1, plain).map((row) => line(row)), line(words, 'quiet')];
	};
}
