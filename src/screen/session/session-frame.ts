import type { Size } from '../../terminal/output.ts';
import { joints } from '../../tube/joints.ts';
import { pictureWords, refusedAndTyped, whereWords } from '../../words/session/said.ts';
import { drawTube } from '../drawing/tube-drawing.ts';
import { type Frame, frame } from '../shell/frame.ts';
import type { Look } from '../shell/look.ts';
import type { KeyHint } from '../text/key-line.ts';
import { type Line, line, wrapped } from '../text/line.ts';
import { bendsOf } from './pages/index.ts';
import type { Room, Section } from './pages/page.ts';
import { walkKeys } from './pages/walk.ts';
import type { SeenSession } from './session-reducer.ts';
import type { Message, Page, SessionState } from './session-state.ts';
import { shortcutsOf } from './shortcuts.ts';
import { aheadText, canBeTakenUp, isDoubt } from './typed-ahead.ts';

/** Pages that are about the tube as it stands. */
const WITH_PICTURE: readonly Page['page'][] = ['ask', 'released', 'least', 'layout', 'corrected', 'done'];

/** A session's screen. */
export function sessionFrame({ session: state, shown }: SeenSession, size: Size, look: Look): Frame {
	const { title, prompt, body } = shown;
	const keys = [
		...walkKeys(state),
		...shortcutsOf(state, prompt).map(({ key, label, brief }): KeyHint => [key, label, brief]),
	];
	const picture = WITH_PICTURE.includes(state.page.page) ? { picture: pictureOf(state, look) } : {};
	const seen = (room: Room): Section[] => [...body(room), { rank: 0, lines: sight(state, room) }];
	const content = {
		title,
		where: where(state),
		body: seen,
		prompt,
		entry: state.entry,
		message: messageOf(state),
		keys,
		...picture,
	};
	return frame(content, size, look);
}

/** What is said; of a refusal with what was typed before it could be read, which a doubt has on its own page. */
function messageOf(state: SessionState): Message | null {
	const { message } = state;
	const typed = aheadText(state);
	if (message === null || typed === '' || isDoubt(state)) return message;
	return { ...message, text: refusedAndTyped(message.text, typed, canBeTakenUp(state)) };
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

function where(state: SessionState): string[] {
	const bend = bendInHand(state);
	return whereWords(state.job.name, state.piece, bend === undefined ? null : { bend, of: bendsOf(state) });
}

/** What a narrow window may need for the words under a picture. */
const CAPTION_ROWS = 2;

/** The tube as made so far and planned from here; where nobody knows more, as drawn. */
function pictureOf(state: SessionState, { ascii }: Look): (columns: number, rows: number) => Line[] {
	const bends = bendsOf(state);
	const now = bendInHand(state) ?? bends + 1;
	const design = state.drawn;
	const shape = state.shape ?? design;
	const met = joints(state.job, shape);
	const asDrawn = state.shape === null;
	return (columns, rows) => {
		const drawn = drawTube(shape, now, columns, rows - CAPTION_ROWS, ascii, design, undefined, met);
		const how = { asDrawn, apart: drawn.drawing, meets: met.length > 0, views: drawn.views };
		const caption = pictureWords(now > bends ? null : now, how);
		return [...drawn.rows.map((row) => line(row)), ...wrapped(caption, columns, 'quiet')];
	};
}
