import { describe, expect, test } from 'vitest';
import { openedOnScreen } from '../../../../src/screen/session/opened-on-screen.ts';
import { layOutPage } from '../../../../src/screen/session/pages/lay-out.ts';
import { lengthToCutWords, setCautions } from '../../../../src/screen/session/pages/set-up.ts';
import { startPage } from '../../../../src/screen/session/pages/start.ts';
import type { SessionState } from '../../../../src/screen/session/session-state.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import type { SetAsk } from '../../../../src/session/protocol/asks.ts';
import type { Job } from '../../../../src/tube/job.ts';
import { asBent } from '../../../../src/tube/turned-job.ts';
import { SESSION, SET_FIRST } from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';
import { begin } from '../../../helpers/session/session-run.ts';
import { plainJob } from '../../../helpers/shop/plain-job.ts';

/** The first set as a session itself puts it out, and the screen's state at it. */
function atFirstSet(job: Job = plainJob()) {
	const { outputs } = begin(job);
	const set = outputs.find((output): output is SetAsk => 'ask' in output && output.ask === 'set')!;
	return { set, state: openedOnScreen(new FakeLive([set], [], job), USUAL_DISPLAY) };
}

describe('the first set', () => {
	test('says of the cautions only what no page said before it', () => {
		const { set, state } = atFirstSet();
		const texts = setCautions(state, set, 200).map((line) => line.map(({ text }) => text).join(''));
		expect(texts).toEqual([expect.stringMatching(/^! Swing: the part beyond the clamp reaches \d+ in from/)]);
	});

	test('leaves hand and end to the page before it, where a session is not bent as drawn', () => {
		const job = asBent(plainJob(), { mirror: true, from: 'far' });
		const { set, state } = atFirstSet(job);
		expect(set.cautions.filter(({ code }) => code === 'bent-as')).toHaveLength(1);
		expect(setCautions(state, set, 200)).toHaveLength(1);
		const room = { columns: 80, rows: 20, free: 20, ink: '#', window: 24, ascii: false, spoken: false };
		const start = startPage(state, {
			page: 'start',
			note: SESSION,
			cautions: true,
			warnings: null,
			layout: false,
		}).body(room);
		const words = start.flatMap(({ lines }) => lines.map((line) => line.map(({ text }) => text).join(''))).join(' ');
		expect(words).toContain("The opposite part: the drawing's mirror image. Begun at the drawing's far end");
	});

	test('the laid-out tube is shown whole in 60 columns, turns and tenths of a degree included', () => {
		const bends = [
			{ straight: 14, angle: 39.8, rotation: 0 },
			{ straight: 27.9, angle: 126.5, rotation: 119.1 },
			{ straight: 25.3, angle: 36.4, rotation: -126.5 },
		];
		const { state } = atFirstSet(plainJob({ shape: { kind: 'bends', bends, last: 18 } }));
		const room = { columns: 60, rows: 20, free: 20, ink: '#', window: 20, ascii: false, spoken: false };
		const lines = layOutPage(state)
			.body(room)
			.flatMap(({ lines }) => lines);
		const rows = lines.map((line) => line.map(({ text }) => text).join('')).filter((text) => text.startsWith('bend'));
		expect(rows).toEqual([
			expect.stringMatching(/to 39\.8°$/),
			expect.stringMatching(/to 126\.5°$/),
			expect.stringMatching(/to 36\.4°$/),
		]);
		for (const text of rows) expect(text.length).toBeLessThanOrEqual(60);
	});

	test('says how long the piece is taken to be, until another length is told', () => {
		const { set, state } = atFirstSet();
		expect(set.cautions.some(({ code }) => code === 'cut-length')).toBe(true);
		expect(lengthToCutWords(state, set).at(-1)).toMatch(
			/^The piece should be [\d /]+ in long\. If it is not, press \* and tell its length\.$/,
		);
		expect(lengthToCutWords({ ...state, details: { length: 40 } }, set)).toEqual([]);
		expect(lengthToCutWords(state, { ...set, bend: 2 })).toEqual([]);
	});
});

describe('the marks laid out', () => {
	const BODY = { columns: 80, rows: 20, free: 20, ink: '#', window: 24, ascii: false, spoken: false };
	const said = (state: SessionState) =>
		layOutPage(state)
			.body(BODY)
			.flatMap(({ lines }) => lines.map((line) => line.map(({ text }) => text).join('')))
			.join(' ');
	test('say once they were moved that they are of the drawing, and nothing where they stand', () => {
		const state = openedOnScreen(new FakeLive([SET_FIRST]), USUAL_DISPLAY);
		expect(said(state)).not.toContain('! ');
		expect(said({ ...state, corrected: true })).toContain("! These are the drawing's marks; each bend's page has");
		// Begun before corners held, and planned for a radius that the drawing's marks are not for.
		const planned = { ...SET_FIRST, mark: { ...SET_FIRST.mark, moved: -0.0625 } };
		expect(said(openedOnScreen(new FakeLive([planned]), USUAL_DISPLAY))).toContain("! These are the drawing's marks");
	});
});
