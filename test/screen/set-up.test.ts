import { describe, expect, test } from 'vitest';
import { USUAL_DISPLAY } from '../../src/screen/display.ts';
import { cautions, pieceWords } from '../../src/screen/pages/set-up.ts';
import { opened } from '../../src/screen/session-state.ts';
import type { SetAsk } from '../../src/session/protocol.ts';
import { FakeLive } from '../helpers/fake-ports.ts';
import { plainJob } from '../helpers/plain-job.ts';
import { begin } from '../helpers/session-run.ts';

/** The first set as a session itself puts it out, and the screen's state at it. */
function atFirstSet() {
	const job = plainJob();
	const { outputs } = begin(job);
	const set = outputs.find((output): output is SetAsk => 'ask' in output && output.ask === 'set')!;
	return { set, state: opened(new FakeLive([set], [], job), USUAL_DISPLAY) };
}

describe('the first set', () => {
	test('says of the cautions only what no page said before it', () => {
		const { set, state } = atFirstSet();
		const texts = cautions(state, set, 200).map((line) => line.map(({ text }) => text).join(''));
		expect(texts).toEqual([expect.stringMatching(/^! Swing: the part beyond the clamp reaches \d+ in from/)]);
	});

	test('says how long the piece is taken to be, until another length is told', () => {
		const { set, state } = atFirstSet();
		expect(set.cautions.some((text) => text.startsWith('Cut length: '))).toBe(true);
		expect(pieceWords(state, set).at(-1)).toMatch(/^The piece is taken as [\d /]+ in; \* tells another length\.$/);
		expect(pieceWords({ ...state, details: { length: 40 } }, set)).toEqual([]);
		expect(pieceWords(state, { ...set, bend: 2 })).toEqual([]);
	});
});
