import { expect, test } from 'vitest';
import { openedOnScreen } from '../../../../src/screen/session/opened-on-screen.ts';
import { confirmPage } from '../../../../src/screen/session/pages/ask-measure.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import type { ConfirmAsk } from '../../../../src/session/protocol/asks.ts';
import { CONFIRM } from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';

/** The lines of the page on which a reading is doubted. */
function wordsOf(ask: ConfirmAsk): string[] {
	const room = { columns: 80, rows: 20, free: 20, ink: '#', window: 24, ascii: false, spoken: false };
	const body = confirmPage(openedOnScreen(new FakeLive([ask]), USUAL_DISPLAY), ask).body(room);
	return body.flatMap(({ lines }) => lines.map((line) => line.map(({ text }) => text).join('')));
}

test('a doubted angle stands on the page as it was typed, and the page says what to do', () => {
	const words = wordsOf({ ...CONFIRM, reading: 6.75 });
	expect(words[0]).toBe('You gave    6.75°');
	expect(words.at(-1)).toBe('Read it again. Still 6.75°? Press +.');
});

test('a dial that is not at its zero has the slack pushed out before it is read again', () => {
	const words = wordsOf({ ...CONFIRM, of: 'pointer', reading: 1.5 });
	expect(words.join(' ')).toContain(
		'Push the slack out and read it again. Still 1.5°? Press +: the stops allow for it.',
	);
});
