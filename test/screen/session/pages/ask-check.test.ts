import { expect, test } from 'vitest';
import { openedOnScreen } from '../../../../src/screen/session/opened-on-screen.ts';
import { checkPage, leastPage } from '../../../../src/screen/session/pages/ask-check.ts';
import { USUAL_DISPLAY } from '../../../../src/screen/shell/display.ts';
import { CHECK_OVALITY } from '../../../helpers/screen/asks.ts';
import { FakeLive } from '../../../helpers/screen/fake-ports.ts';
import { plainJob } from '../../../helpers/shop/plain-job.ts';

/** What a number typed as the greatest diameter of a tube of 1.5 in comes to. */
function greatest(typed: string) {
	const state = openedOnScreen(new FakeLive([CHECK_OVALITY], [], plainJob()), USUAL_DISPLAY);
	return checkPage(state, CHECK_OVALITY).prompt.read?.(typed);
}

test('the ratio, which the page expects, is not taken for the greatest diameter', () => {
	for (const slip of ['0.95', '1', '1.2']) {
		expect(() => greatest(slip)).toThrow('at least its own, 1.5 in: write the diameter, not the ratio');
	}
	expect(greatest('1 9/16')).toMatchObject({ step: 'draft', draft: { of: 'greatest', value: 1.5625 } });
	// A caliper may read a hair under the tube's size.
	expect(greatest('1.49')).toMatchObject({ draft: { value: 1.49 } });
});

test('a least diameter above the greatest says so', () => {
	const state = openedOnScreen(new FakeLive([CHECK_OVALITY], [], plainJob()), USUAL_DISPLAY);
	const { read } = leastPage(state, 1.6).prompt;
	expect(() => read?.('1.7')).toThrow('the least diameter is above 0 and at most the greatest, 1.6 in');
	expect(() => read?.('wide')).toThrow('write a length, for example 9 3/8');
	expect(read?.('1.52')).toMatchObject({ answer: { action: { do: 'reading', reading: 0.95 } } });
});
