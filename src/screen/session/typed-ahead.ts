import { TYPED_ENTER } from '../../words/session/keys.ts';
import { LOOK_FIRST } from '../../words/session/said.ts';
import type { Key } from '../shell/keys.ts';
import { NOTHING } from '../shell/prompt.ts';
import type { SessionState } from './session-state.ts';

/** So long a doubt's page, a refusal, or a tube's last page has to be on the screen before a key answers it, milliseconds. */
export const SEEN_MS = 500;
/** Keys no further apart than this come in one burst: an instrument's or a paste's, and no answer to what came up in between. */
const BURST_MS = 60;

/** Whether a reading is being doubted on the page that is open. */
export function isDoubt({ page, ask }: SessionState): boolean {
	return page.page === 'ask' && ask?.ask === 'confirm';
}

/** Whether the tube is bent and the next one of its batch is a key away: a key meant for the last bend is not to begin it. */
const isBetweenPieces = ({ page, batch }: SessionState) => page.page === 'done' && batch?.next != null;

/** Whether a number was given and refused: it stands in its field, and what was typed for the next question is no answer to this one. */
const isRefusal = ({ message, entry }: SessionState) =>
	message !== null && message.kind !== 'said' && entry.field !== '';

const isToBeRead = (state: SessionState) => isRefusal(state) || isDoubt(state) || isBetweenPieces(state);

/** The state as it comes onto the screen: from now on what is to be read first, and was not there before, is. */
export function shownAt(before: SessionState | null, after: SessionState, now: number): SessionState {
	if (!isToBeRead(after)) return after.ahead === null ? after : { ...after, ahead: null };
	return before !== null && wasThere(before, after) ? after : { ...after, ahead: { since: now, last: now, keys: [] } };
}

function wasThere(before: SessionState, after: SessionState): boolean {
	if (isRefusal(after)) return before.message === after.message;
	return (isToBeRead(before) || isBetweenPieces(after)) && before.ask === after.ask;
}

/** What a key that came then does to what is to be read: it came too early, it takes up what did, or (null) it answers. */
export function aheadOf(
	state: SessionState,
	key: Key,
	now: number,
): { early: SessionState } | { taken: readonly Key[] } | null {
	const { ahead, entry } = state;
	if (ahead === null || !isToBeRead(state)) return null;
	const refusal = isRefusal(state);
	if (refusal && key.key !== 'character' && key.key !== 'return') return null;
	const { since, last, keys } = ahead;
	if (isBetweenPieces(state))
		return now - since < SEEN_MS ? { early: { ...state, message: { kind: 'said', text: LOOK_FIRST } } } : null;
	// The rest of a number that was begun too early is no number.
	const goesOn = isUnfinished(keys) && key.key === 'character';
	if (now - since < SEEN_MS || now - last < BURST_MS || goesOn) {
		const early = { ...state, ahead: { since, last: now, keys: [...keys, key] } };
		return { early: refusal ? early : { ...early, entry: NOTHING } };
	}
	const takesUp = key.key === 'return' && keys.length > 0 && (refusal ? canBeTakenUp(state) : entry.field === '');
	return takesUp ? { taken: firstAnswer([...keys, key]) } : null;
}

/** Whether Enter takes up what was typed too early: where the disk refused, it tries again. */
export const canBeTakenUp = ({ message }: SessionState): boolean => message?.kind !== 'unsaved';

/** Whether a number was begun and not given. */
function isUnfinished(keys: readonly Key[]): boolean {
	const last = keys.at(-1);
	return last?.key === 'character' && !isSign(keys[0]);
}

const isSign = (key: Key | undefined) => key?.key === 'character' && ['+', '/', '*'].includes(key.text);

/** Up to the key that ends the first answer: what came after it was meant for yet another question. */
function firstAnswer(keys: readonly Key[]): readonly Key[] {
	const [first] = keys;
	if (first !== undefined && isSign(first)) return [first];
	const end = keys.findIndex(({ key }) => key === 'return');
	return end < 0 ? keys : keys.slice(0, end + 1);
}

const LONGEST = 24;

/** What was typed too early, as it can be read; '' for nothing. */
export function aheadText({ ahead }: SessionState): string {
	const text = (ahead?.keys ?? [])
		.map((key) => (key.key === 'character' ? key.text : key.key === 'return' ? TYPED_ENTER : ''))
		.join('');
	return text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text.trim();
}
