import { describe, expect, it } from 'vitest';
import { answerEvents } from '../../../src/session/answers.ts';
import { evolve } from '../../../src/session/log/fold.ts';
import type { Action } from '../../../src/session/protocol/action.ts';
import { bendTo } from '../../helpers/session/bend-to.ts';
import { begin, give, giveAll, open, type Run } from '../../helpers/session/session-run.ts';
import { whyOf } from '../../helpers/session/why.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

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
	return 'refused' in decision ? whyOf(decision.refused) : null;
}

describe('a number that cannot be a reading of its kind', () => {
	it.each<[string, Run, Action, string]>([
		[
			'a dial under load below 0',
			at.pull,
			{ do: 'loaded', loaded: -5 },
			'-5° cannot be the dial, held under load: an angle lies from 0 to 360 degrees.',
		],
		[
			'a dial after release beyond a turn',
			at.pull,
			{ do: 'loaded', loaded: 90, released: 400 },
			'400° cannot be the dial after release: a dial shows at most 360 degrees.',
		],
		[
			'the second of two angles below 0',
			at.measure,
			{ do: 'angles', angles: [88, -0.5] },
			'-0.5° cannot be the angle finder: an angle lies from 0 to 360 degrees.',
		],
		[
			'the piece without a length',
			at.set,
			{ do: 'ready', length: 0 },
			'0 in cannot be the length of the piece: a length is above 0.',
		],
		[
			'a doubted dial read again as more than a turn',
			at.confirm,
			{ do: 'reading', reading: 900 },
			'900° cannot be the dial, held under load: an angle lies from 0 to 360 degrees.',
		],
		[
			'a dial corrected to less than 0',
			at.measure,
			{ do: 'amend', entry: 2, reading: -1 },
			'-1° cannot be the dial, held under load: an angle lies from 0 to 360 degrees.',
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

describe('a number that mechanics excludes', () => {
	const job = plainJob({
		shape: byBends(
			[
				[16, 30, 0],
				[20, 40, 90],
			],
			18,
		),
		tooling: { growth: 1 },
	});
	/** Held where asked, which is line 2 of the log; released said or not. */
	const pull = give(begin(job), { ready: true });
	const { stop } = open(pull, 'pull');
	const held = give(pull, { loaded: stop });
	const why = (run: Run) => {
		const [first] = run.outputs;
		return first && 'note' in first && first.note === 'refused' && first.code === 'not-possible' ? whyOf(first) : null;
	};
	const above = `The dial was held at ${stop}° (line 2 of the log), so bend 1 cannot measure 275°. Measure again, or correct line 2 if the tube was pulled further.`;

	it('is refused at measure, alone, twice and beside another, and nothing is kept of it', () => {
		for (const answer of [{ angle: 275 }, { angles: [275, 275] }, { angles: [28, 275] }]) {
			const refused = give(held, answer);
			expect(why(refused)).toBe(above);
			expect(refused.state).toBe(held.state);
		}
	});

	it('is refused as what a doubted reading is read again as, and the doubt can be settled still', () => {
		const doubted = give(held, { angle: stop + 5 });
		expect(open(doubted, 'confirm').of).toBe('angle');
		expect(why(give(doubted, { reading: 275 }))).toBe(above);
		expect(open(give(give(doubted, { reading: 275 }), { reading: stop - 3 }), 'measure').readings).toBe(1);
	});

	it('is refused when it is kept, of a log that has it doubted', () => {
		const reading = { of: 'angle' as const, value: 275, bend: 1 };
		const events = [
			{ type: 'reading-doubted' as const, reading, expected: { value: 28, sd: 1 }, reason: [], others: [], rest: [] },
		];
		const state = evolve(held.state, { entry: 3, at: '', events });
		expect(why(give({ state, outputs: [] }, { keep: true }))).toBe(above);
	});

	it('is refused in a correction', () => {
		const measured = give(held, { angles: [28, 28.2] });
		expect(why(give(measured, { amend: { entry: 3, reading: 275 } }))).toBe(above);
	});

	it('is refused after release, in the answer of its pull and beside a dial that is asked again', () => {
		expect(why(give(pull, { loaded: stop, released: 82 }))).toBe(
			`The dial was held at ${stop}°, so it cannot show 82° after release. Read both again.`,
		);
		const doubted = give(pull, { loaded: stop + 60, released: stop - 2 });
		expect(open(doubted, 'confirm').of).toBe('loaded');
		expect(why(give(doubted, { keep: true }))).toContain(
			'Read the dial again, or take the last answer back and give both again.',
		);
		expect(open(give(doubted, { reading: stop }), 'measure').bend).toBe(1);
	});

	it('is refused far below, but of a bend that was opened', () => {
		const far = giveAll(pull, { loaded: stop + 60 }, { keep: true });
		expect(why(give(far, { angle: 28 }))).toBe(
			`The dial was held at ${stop + 60}° (line 3 of the log), so bend 1 cannot measure 28°. Measure again, or correct line 3 if the pull ended sooner.`,
		);
		const opened = giveAll(held, { angles: [34, 34.2] }, { keep: true }, { do: 'relieve' });
		expect(why(give(opened, { angle: 2 }))).toBeNull();
	});

	it('can be the true one: given again after its pull was corrected', () => {
		const amended = giveAll(held, { amend: { entry: 2, reading: stop + 30 } }, { keep: true });
		expect(why(give(held, { angle: stop + 26 }))).not.toBeNull();
		expect(open(give(amended, { angles: [stop + 26, stop + 26.4] }), 'decide').made.angle).toBeCloseTo(stop + 26.2, 0);
	});

	it('can be the true one: given again after the pull that was forgotten', () => {
		const skipped = give(held, { skip: true });
		const again = skipped.state.phase.at === 'pull' ? skipped : giveAll(skipped, { do: 'pull' }, { ready: true });
		const pulled = giveAll(again, { loaded: stop + 30 }, { keep: true });
		expect(open(give(pulled, { angles: [stop + 26, stop + 26.4] }), 'decide').made.angle).toBeCloseTo(stop + 26.2, 0);
	});

	it('can be the pull: a correction of it that what was measured excludes is not kept, until that is corrected', () => {
		const measured = give(held, { angles: [28, 28.2] });
		const doubted = give(measured, { amend: { entry: 2, reading: stop + 90 } });
		expect(why(give(doubted, { keep: true }))).toBe(
			`Bend 1 measured 28° (line 3 of the log), so it cannot have been held at ${stop + 90}°. Correct line 3 first if that is wrong. If both are wrong, take them back and give both again.`,
		);
		expect(open(give(doubted, { reading: stop + 1 }), 'decide').bend).toBe(1);
	});
});
