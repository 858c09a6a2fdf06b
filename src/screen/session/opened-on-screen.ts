import type { HalfAnswer } from '../../session/protocol/action.ts';
import type { SessionNote } from '../../session/protocol/notes.ts';
import type { Display } from '../shell/display.ts';
import { NOTHING } from '../shell/prompt.ts';
import { afterOutputs, NOTHING_SHOWN, type ShownAlready } from './following.ts';
import type { LivePort } from './live-port.ts';
import { ASK, type Page, type SessionState, standingOf, toldMessage } from './session-state.ts';

/** A session as it is opened: what was shown so far is shown again, down to the open ask. */
export function openedOnScreen(port: LivePort, display: Display, seen: ShownAlready = NOTHING_SHOWN): SessionState {
	const blank: SessionState = {
		id: port.id,
		job: { ...port.job, lengths: display.lengths },
		drawn: port.drawn,
		display,
		logPath: port.logPath,
		...standingOf(port),
		practice: port.sight !== undefined,
		piece: pieceIn(port),
		set: null,
		page: ASK,
		queue: [],
		entry: NOTHING,
		details: {},
		message: toldMessage(port.messages),
		corrected: false,
		release: null,
		ahead: null,
		cautioned: [],
		unsaved: null,
		rescuePlace: port.rescue === undefined ? null : (port.rescuePlace?.() ?? ''),
	};
	const state = afterOutputs(blank, port.outputs, seen);
	const draft = port.draft?.() ?? null;
	return draft === null ? state : { ...state, ...lastOf([...pagesAhead(state), draftPage(draft)]) };
}

function pieceIn({ outputs }: LivePort): SessionState['piece'] {
	const note = outputs.find((output): output is SessionNote => 'note' in output && output.note === 'session');
	return note?.piece === undefined ? null : { number: note.piece, wanted: note.quantity ?? 1 };
}

/** The pages still to be seen before the open question. */
const pagesAhead = ({ page, queue }: SessionState): Page[] => [page, ...queue].filter((each) => each !== ASK);

const lastOf = ([page = ASK, ...queue]: Page[]): Pick<SessionState, 'page' | 'queue'> => ({ page, queue });

/** The page that asks for the second number. */
function draftPage({ of, value }: HalfAnswer): Page {
	return of === 'loaded' ? { page: 'released', loaded: value } : { page: 'least', greatest: value };
}
