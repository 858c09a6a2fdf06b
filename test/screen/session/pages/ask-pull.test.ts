import { describe, expect, test } from 'vitest';
import { openedOnScreen } from '../../../../src/screen/session/opened-on-screen.ts';
import { pullPage } from '../../../../src/screen/session/pages/ask-pull.ts';
import { fitted } from '../../../../src/screen/session/pages/page.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import type { PullAsk } from '../../../../src/session/protocol/asks.ts';
import { PULL, SET } from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';

/** All there may be to say of a pull: a zero of its own, what it is known from, that the dial moved. */
const WORDY: PullAsk = {
	...PULL,
	reason: [
		{ code: 'springback-expected', by: 3.6, to: 47.9, sd: 0.4, zero: 1.5, known: { tubes: 3, near: [], pulls: 2 } },
		{ code: 'chance-over', limit: 48.7, chance: 0.018 },
	],
};

/** The page in a small window whose message and keys leave so many rows. */
function shown(live: FakeLive, rows: number): string {
	const room = { columns: 60, rows, free: rows, ink: '#', window: 20, ascii: false, spoken: false };
	const { lines } = fitted(pullPage(openedOnScreen(live, USUAL_DISPLAY), WORDY).body(room), rows);
	return lines.map((line) => line.map(({ text }) => text).join('')).join('\n');
}

describe('the pull in the smallest window', () => {
	test.each([10, 11, 12, 14])('keeps mark, turn, stop and the chance to go over in %i rows', (rows) => {
		const text = shown(new FakeLive([SET, WORDY]), rows);
		expect(text).toMatch(/^MARK .* TURN 180° either way$/m);
		expect(text).toContain('STOP, deg');
		expect(text).toMatch(/Chance of\s+going\s+over 48\.7°/);
	});

	test('of a session that goes on has them too: nobody remembers the turn over a night', () => {
		const gone = Object.assign(new FakeLive([WORDY]), { placed: () => SET });
		expect(shown(gone, 12)).toMatch(/^MARK .* TURN 180° either way$/m);
	});
});
