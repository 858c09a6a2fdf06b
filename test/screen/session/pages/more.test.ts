import { describe, expect, test } from 'vitest';
import { openedOnScreen } from '../../../../src/screen/session/opened-on-screen.ts';
import { detailPage } from '../../../../src/screen/session/pages/more.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import * as asks from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';

describe('what was set otherwise than asked', () => {
	const state = openedOnScreen(new FakeLive([asks.SET]), USUAL_DISPLAY);

	test.each([
		['rotation', '450', /at most 360 degrees/],
		['rotation', '-361', /at most 360 degrees/],
		['mark', '-3', /above 0/],
		['length', '0', /above 0/],
	] as const)('is no number of its kind: %s %s is refused where it is typed', (of, text, why) => {
		expect(() => detailPage(state, of).prompt.read!(text)).toThrow(why);
	});

	test.each(['90', '-270', '360'])('may be a turn of %s', (text) => {
		expect(detailPage(state, 'rotation').prompt.read!(text)).toMatchObject({ step: 'detail', of: 'rotation' });
	});
});
