import { describe, expect, it } from 'vitest';
import { answerEvents } from '../../src/session/answers.ts';
import type { Action } from '../../src/session/protocol.ts';
import { bendTo } from '../helpers/bend-to.ts';
import { plainJob } from '../helpers/plain-job.ts';
import { begin, give, giveAll, type Run } from '../helpers/session-run.ts';

const round = plainJob({ checks: [{ name: 'round', kind: 'ovality', bend: 1, tolerance: 0.1 }] });
const at = {
	set: begin(round),
	pull: give(begin(round), { ready: true }),
	measure: giveAll(begin(round), { ready: true }, { loaded: 90 }),
	confirm: giveAll(begin(round), { ready: true }, { loaded: 9 }),
};

/** As a shell that builds actions itself gives it: no line is parsed. */
function refusal(run: Run, action: Action): string | null {
	const decision = answerEvents({ action }, run.state);
	return 'refused' in decision ? decision.refused.why : null;
}

describe('a number that cannot be a reading of its kind', () => {
	it.each<[string, Run, Action, string]>([
		[
			'a dial under load below 0',
			at.pull,
			{ do: 'loaded', loaded: -5 },
			'-5 cannot be the dial under load: an angle lies from 0 to 360 degrees.',
		],
		[
			'a dial after release beyond a turn',
			at.pull,
			{ do: 'loaded', loaded: 90, released: 400 },
			'400 cannot be the dial after release: a dial shows at most 360 degrees.',
		],
		[
			'the second of two angles below 0',
			at.measure,
			{ do: 'angles', angles: [88, -0.5] },
			'-0.5 cannot be the angle: an angle lies from 0 to 360 degrees.',
		],
		['the piece without a length', at.set, { do: 'ready', length: 0 }, '0 cannot be the length: a length is above 0.'],
		[
			'a doubted dial read again as more than a turn',
			at.confirm,
			{ do: 'reading', reading: 900 },
			'900 cannot be the dial under load: an angle lies from 0 to 360 degrees.',
		],
		[
			'a dial corrected to less than 0',
			at.measure,
			{ do: 'amend', entry: 2, reading: -1 },
			'-1 cannot be the dial under load: an angle lies from 0 to 360 degrees.',
		],
	])('%s is refused whichever shell it comes from', (_, run, action, why) => {
		expect(refusal(run, action)).toBe(why);
	});

	it('is not one that only looks unlikely', () => {
		expect(refusal(at.pull, { do: 'loaded', loaded: 0 })).toBeNull();
		expect(refusal(at.pull, { do: 'loaded', loaded: 90, released: -2 })).toBeNull();
		expect(refusal(at.set, { do: 'ready', pointer: -1, rotation: -170 })).toBeNull();
	});

	it('is refused at a check by its kind', () => {
		const run = bendTo(begin(round), 90);
		expect(run.outputs.at(-1)).toMatchObject({ ask: 'check', kind: 'ovality' });
		expect(refusal(run, { do: 'reading', reading: 1.2 })).toMatch(
			/^1\.2 cannot be the check "round": the least diameter/,
		);
		expect(give(run, { reading: 1.2 }).outputs[0]).toMatchObject({ note: 'refused', code: 'not-possible' });
	});
});
