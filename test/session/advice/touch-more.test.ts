import { describe, expect, it } from 'vitest';
import { gainBy } from '../../../src/session/advice/going-back.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import { made } from '../../../src/springback/filter.ts';
import type { Job } from '../../../src/tube/job.ts';
import { bendAndSkip, bendTo } from '../../helpers/session/bend-to.ts';
import { begin, give, open, type Run } from '../../helpers/session/session-run.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

const LEG = 40;
/** Two right angles the same way with long legs, and how far apart its feet are: what the second bend settles. */
const hoop = (parts: Partial<Job> = {}): Job =>
	plainJob({
		shape: byBends(
			[
				[LEG, 90, 0],
				[24, 90, 0],
			],
			LEG,
		),
		checks: [{ name: 'feet apart', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 1 / 4 }],
		tolerance: { shape: 1 },
		tooling: { growth: 1 },
		...parts,
	});

/** Both bends measured right, and the feet read so much wider than that leads one to expect; a doubted reading stands. */
function feetWider(by: number, job = hoop()): Run {
	const now = bendTo(bendAndSkipAndTake(begin(job), 90), 90);
	const { expect: expected } = open(now, 'check');
	const read = give(now, { reading: expected.value + by });
	return asksAgain(read) ? give(read, { keep: true }) : read;
}

const asksAgain = ({ outputs }: Run) => 'ask' in outputs.at(-1)! && (outputs.at(-1) as Ask).ask === 'confirm';
const bendAndSkipAndTake = (run: Run, angle: number) => give(bendAndSkip(run, angle), { do: 'accept' });
const codes = (run: Run) => open(run, 'decide').reason.map(({ code }) => code);

describe('a bend that would do by itself', () => {
	it('is given a touch more where its checks show that the tube wants it', () => {
		const run = feetWider(3 / 8);
		const ask = open(run, 'decide');
		expect(ask.advice).toBe('pull');
		const [more] = ask.reason;
		if (more?.code !== 'touch-more') throw new Error(`the reason is ${codes(run).join(', ')}`);
		// The feet come together by the leg times the angle: elementary geometry.
		const wanted = (180 / Math.PI) * (3 / 8 / LEG);
		expect(more.by).toBeGreaterThan(wanted / 3);
		expect(more.by).toBeLessThan(wanted * 2);
		expect(more.chance - more.before).toBeGreaterThanOrEqual(0.2);
	});

	it('is then aimed at that angle, and its stop lies beyond what was held', () => {
		const run = feetWider(3 / 8);
		const [more] = open(run, 'decide').reason;
		const set = give(run, { do: 'pull' });
		expect(open(set, 'set')).toMatchObject({ bend: 2, seat: 2 });
		expect(open(set, 'set').target).toBeCloseTo((more as { to: number }).to, 9);
		const pull = open(give(set, { ready: true }), 'pull');
		const held = run.state.bends[1]!.pulls.at(-1)!.loaded;
		expect(pull.stop).toBeGreaterThan(held);
		expect(pull.target).toBe(open(set, 'set').target);
	});

	it('is taken where the tube fits, and where the feet are too near already', () => {
		for (const by of [0, -3 / 8]) expect(codes(feetWider(by))).not.toContain('touch-more');
		expect(open(feetWider(0), 'decide').advice).toBe('accept');
	});

	it('gains nothing by a pull that leaves it as it is, whatever a check has shown of the tube', () => {
		for (const by of [3 / 8, 1 / 2, -3 / 8]) {
			const { state } = feetWider(by);
			const asItIs = { angle: made(state.filter).angle, sd: 0 };
			expect(gainBy(state, 2, { stop: 0, lead: null, expect: asItIs, risk: 0, limit: false })).toBeNull();
		}
	});

	it('keeps its target where the operator pulls it against the advice', () => {
		const run = feetWider(0);
		const before = open(run, 'decide').target;
		expect(open(give(run, { do: 'pull' }), 'set').target).toBe(before);
	});
});
