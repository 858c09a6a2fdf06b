import { expect, test } from 'vitest';
import { opened } from '../../../../src/screen/session/opening.ts';
import { confirmPage } from '../../../../src/screen/session/pages/ask-measure.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import { CONFIRM } from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';

test('a doubted angle stands on the page as it was typed, and the page says what to do', () => {
	const ask = { ...CONFIRM, reading: 6.75 };
	const room = { columns: 80, rows: 20, free: 20, ink: '#', window: 24, ascii: false, spoken: false };
	const body = confirmPage(opened(new FakeLive([ask]), USUAL_DISPLAY), ask).body(room);
	const words = body.flatMap(({ lines }) => lines.map((line) => line.map(({ text }) => text).join('')));
	expect(words[0]).toBe('You gave    6.75°');
	expect(words.at(-1)).toBe('Read it again. Still 6.75°? Press +.');
});
