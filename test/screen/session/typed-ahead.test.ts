import { describe, expect, test } from 'vitest';
import { rings } from '../../../src/screen/session/bell.ts';
import { openedOnScreen } from '../../../src/screen/session/opened-on-screen.ts';
import { viewOf } from '../../../src/screen/session/pages/index.ts';
import { sessionFrame } from '../../../src/screen/session/session-frame.ts';
import { afterAnswer, notSaved, sessionKey } from '../../../src/screen/session/session-reducer.ts';
import { type SessionState, standingOf } from '../../../src/screen/session/session-state.ts';
import { aheadText, shownAt } from '../../../src/screen/session/typed-ahead.ts';
import { USUAL_DISPLAY } from '../../../src/screen/shell/display.ts';
import { keyOfChunk } from '../../../src/screen/shell/keys.ts';
import { lookOf } from '../../../src/screen/shell/look.ts';
import type { Output, RefusedNote } from '../../../src/session/protocol/notes.ts';
import * as asks from '../../helpers/screen/asks.ts';
import { BATCH } from '../../helpers/screen/batch.ts';
import { FakeLive } from '../../helpers/screen/fake-ports.ts';

const state = (outputs: readonly Output[], display = USUAL_DISPLAY) => openedOnScreen(new FakeLive(outputs), display);

/** A doubt that came up at 0. */
const doubt = shownAt(null, state([asks.CONFIRM]), 0);

/** What comes of keys, each so many milliseconds after the one before, the first `at`: the last state, and the answer if there was one. */
function typed(start: SessionState, keys: string, at: number, gap = 0) {
	let [session, now] = [start, at];
	for (const chunk of keys) {
		const { state: next, effect } = sessionKey({ session, shown: viewOf(session) }, keyOfChunk(chunk)!, now);
		if (effect?.effect === 'answer') return { session: next, answer: effect.answer.action };
		session = shownAt(session, next, now);
		now += gap;
	}
	return { session, answer: null };
}

describe('what is typed before a doubt can be read', () => {
	test.each(['+', '48.1\r', '1\r'])('does not answer it, and is shown: %j', (keys) => {
		const { session, answer } = typed(doubt, keys, 100);
		expect(answer).toBeNull();
		expect(aheadText(session)).toBe(keys.replace('\r', ' Enter').trim());
		expect(session.entry.field).toBe('');
	});

	test('half a second later the same keys answer it', () => {
		expect(typed(doubt, '+', 500).answer).toEqual({ do: 'keep' });
		expect(typed(doubt, '48.1\r', 500).answer).toEqual({ do: 'reading', reading: 48.1 });
		expect(typed(doubt, '+', 499).answer).toBeNull();
	});

	test('Enter takes it up: the first answer of it and no more', () => {
		const later = (keys: string) => typed(typed(doubt, keys, 10).session, '\r', 2000).answer;
		expect(later('48.1\r')).toEqual({ do: 'reading', reading: 48.1 });
		expect(later('48.1\r+')).toEqual({ do: 'reading', reading: 48.1 });
		expect(later('+')).toEqual({ do: 'keep' });
		expect(later('48.1')).toEqual({ do: 'reading', reading: 48.1 });
	});

	test('another answer makes it forgotten', () => {
		const early = typed(doubt, '48.1\r', 10).session;
		expect(typed(early, '47.2\r', 2000).answer).toEqual({ do: 'reading', reading: 47.2 });
		expect(typed(early, '+', 2000).answer).toEqual({ do: 'keep' });
	});

	test('one burst answers nothing, however long it goes on', () => {
		const { session, answer } = typed(doubt, '15.4\r16.2\r15.4\r16.2\r15.4\r', 5, 40);
		expect(answer).toBeNull();
		expect(aheadText(session)).toContain('15.4');
	});

	test('the rest of a number that was begun too early is no number', () => {
		const begun = typed(doubt, '89', 300, 150).session;
		const rest = typed(begun, '.5', 700, 200);
		expect(rest.answer).toBeNull();
		expect(aheadText(rest.session)).toBe('89.5');
		expect(typed(rest.session, '\r', 1500).answer).toEqual({ do: 'reading', reading: 89.5 });
	});

	test('a question that is no doubt takes its keys at once', () => {
		const measure = shownAt(null, state([asks.MEASURE]), 0);
		expect(typed(measure, '48.1\r', 1).answer).toEqual({ do: 'angles', angles: [48.1] });
	});

	test('a doubt looked up in the help is read again', () => {
		const help = typed(doubt, 'h', 900).session;
		expect(help.page.page).toBe('help');
		const back = typed(help, '/', 5000).session;
		expect(typed(back, '+', 5100).answer).toBeNull();
		expect(typed(back, '+', 5600).answer).toEqual({ do: 'keep' });
	});
});

describe('what is typed before a refusal can be read', () => {
	const pull = shownAt(null, state([asks.PULL]), 0);
	const held = (value: number) => ({ do: 'loaded', loaded: value });

	test.each([0, 50])('answers nothing: + after what is no number is not "held there", %i ms later', (gap) => {
		const { session, answer } = typed(pull, '18.5.5\r+', 0, gap);
		expect(answer).toBeNull();
		expect(session.entry.field).toBe('18.5.5');
		expect(session.message?.kind).toBe('wrong');
		expect(aheadText(session)).toBe('+');
	});

	/** All that the screen shows, in one line. */
	function seen(session: SessionState): string {
		const size = { columns: 80, rows: 24 };
		const { lines } = sessionFrame({ session, shown: viewOf(session) }, size, lookOf({ TERM: 'xterm' }, true));
		const texts = lines.map((parts) => parts.map((part) => part.text).join(''));
		return texts.join(' ').replaceAll(/\s+/g, ' ');
	}
	const AHEAD = 'Typed before you saw this: ';

	test('is shown with the refusal, and Enter takes it up', () => {
		const { session } = typed(pull, '18.5.5\r19\r', 0);
		expect(seen(session)).toContain(`for example 16.5. ${AHEAD}19 Enter. Not used. Enter uses it now.`);
		expect(typed(session, '\r', 2000).answer).toEqual(held(19));
	});

	test('does not answer a doubt either, and is shown once there', () => {
		const { session, answer } = typed(doubt, '48.1.1\r+', 2000);
		expect(answer).toBeNull();
		expect(session.entry.field).toBe('48.1.1');
		expect(seen(session).split(AHEAD)).toHaveLength(2);
	});

	test('at a doubt, too, Enter is not said to take it up where it tries to save again', () => {
		const full = notSaved(typed(doubt, '48.1', 2000).session, 'disk full', 5);
		const early = typed(shownAt(doubt, full, 2100), '47\r', 2150).session;
		expect(seen(early)).toContain(`${AHEAD}47 Enter. Not used.`);
		expect(seen(early)).not.toContain('Enter uses it now');
		expect(typed(early, '\r', 4000).answer).toEqual({ do: 'reading', reading: 48.1 });
	});

	test('a number that is mended at once is mended', () => {
		const { session } = typed(pull, '18.5.5\r\b\b', 0);
		expect(session.entry.field).toBe('18.5');
		expect(session.message).toBeNull();
	});

	test('also where the session itself refused', () => {
		const note: RefusedNote = { note: 'refused', code: 'not-possible', reason: [{ code: 'nothing-to-undo' }] };
		const standing = standingOf(new FakeLive([asks.PULL]));
		const refused = afterAnswer(typed(pull, '999', 0).session, { ...standing, outputs: [note], messages: [] });
		const { session, answer } = typed(shownAt(pull, refused, 100), '+', 150);
		expect(answer).toBeNull();
		expect(session.message).toEqual(refused.message);
	});

	test('where no number was given and refused, one answers at once', () => {
		const note: RefusedNote = { note: 'refused', code: 'not-possible', reason: [{ code: 'nothing-to-undo' }] };
		const refused = afterAnswer(pull, { ...standingOf(new FakeLive([asks.PULL])), outputs: [note], messages: [] });
		expect(refused.message?.kind).toBe('wrong');
		expect(typed(shownAt(pull, refused, 100), '19\r', 150).answer).toEqual(held(19));
	});

	test('half a second later a key begins anew', () => {
		const { session } = typed(pull, '18.5.5\r', 0);
		expect(typed(session, '19\r', 600).answer).toEqual(held(19));
	});

	test('where the disk refused, Enter tries again and takes nothing up', () => {
		const full = notSaved(typed(pull, '19', 0).session, 'disk full', 5);
		const early = typed(shownAt(pull, full, 100), '16.5\r', 150).session;
		expect(early.entry.field).toBe('19');
		expect(typed(early, '\r', 2000).answer).toEqual(held(19));
	});
});

describe('the bell', () => {
	const measure = state([asks.MEASURE]);

	test('rings for a doubt, once', () => {
		expect(rings(measure, doubt)).toBe(true);
		expect(rings(doubt, typed(doubt, '4', 900).session)).toBe(false);
	});

	test('rings for numbers that changed and for an error, not for a question', () => {
		expect(rings(measure, state([asks.CORRECTED, asks.SET]))).toBe(true);
		expect(rings(measure, { ...measure, message: { kind: 'wrong', text: 'no' } })).toBe(true);
		expect(rings(measure, { ...measure, message: { kind: 'said', text: 'yes' } })).toBe(false);
		expect(rings(null, state([asks.SET, asks.PULL]))).toBe(false);
	});

	test('is still where it is switched off', () => {
		const display = { ...USUAL_DISPLAY, bell: false };
		expect(rings(measure, state([asks.CONFIRM], display))).toBe(false);
	});
});

describe('the last page of a tube, with the next one a key away', () => {
	const deciding = state([asks.DECIDE]);
	const last = { ...state([asks.DONE]), batch: BATCH };
	const press = (session: SessionState, now: number) =>
		sessionKey({ session, shown: viewOf(session) }, keyOfChunk('+')!, now);

	test('takes no key for half a second, and says so; then the same key begins the next piece', () => {
		const shown = shownAt(deciding, last, 1000);
		const early = press(shown, 1400);
		expect(early.effect).toBeUndefined();
		expect(early.state.message?.text).toContain('press the key again');
		const again = shownAt(shown, early.state, 1400);
		expect(press(again, 1500).effect).toMatchObject({ effect: 'follow' });
	});

	test('need not be read again by one who has been on the page behind it', () => {
		const shown = shownAt(deciding, last, 1000);
		const behind = sessionKey({ session: shown, shown: viewOf(shown) }, keyOfChunk('*')!, 2000).state;
		const back = shownAt(behind, { ...behind, page: shown.page }, 2100);
		expect(press(back, 2110).effect).toMatchObject({ effect: 'follow' });
	});
});
