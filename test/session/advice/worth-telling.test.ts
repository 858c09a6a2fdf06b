import { describe, expect, it } from 'vitest';
import { gainOfTelling, tellingPays } from '../../../src/session/advice/worth-telling.ts';
import { bendAndSkip } from '../../helpers/session/bend-to.ts';
import { begin, give, open } from '../../helpers/session/session-run.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';
import { apart, walked } from '../../helpers/shop/plain-tube.ts';

const BENDS = [
	[12, 40, 0],
	[14, 65, 90],
	[12, 30, -60],
	[15, 80, 120],
] as const;
const TAPE = 1 / 16;
const SET = Math.hypot(0.44 / 25.4, TAPE / Math.sqrt(12));
const READ = Math.hypot(0.42 / 25.4, TAPE / 2 / Math.sqrt(12));
const job = plainJob({ shape: byBends(BENDS, 14), trim: { start: 1, end: 1 }, tooling: { growth: 1, tape: TAPE } });
const bendAsAsked = (run: ReturnType<typeof begin>) =>
	give(bendAndSkip(run, run.state.plan.current[run.state.bend - 1]!.angle), { do: 'accept' });

/** How far the far end moves for a small change, per unit of it, by geometry of the test's own. */
function moves(
	change: (straights: number[], bends: { angle: number; rotation: number; radius: number }[]) => void,
): number {
	const tube = () => ({
		straights: [12, 14, 12, 15, 14],
		bends: BENDS.map(([, angle, rotation]) => ({ angle, rotation, radius: 6 })),
	});
	const [was, is] = [tube(), tube()];
	change(is.straights, is.bends);
	return apart(walked(was.straights, was.bends).corners.at(-1)!, walked(is.straights, is.bends).corners.at(-1)!) / 1e-4;
}

describe('what telling real marks and turns is worth', () => {
	it('is what the hands’ errors move the far end by, less what reading them back leaves, the last bend’s always', () => {
		// From README and the estimate: a turn .33 degrees as set and .1 as read back, a mark .44 mm and a division's rounding, .42 and half of one, an angle .2 degrees.
		let [now, told] = [0, 0];
		for (let i = 0; i < 4; i++) {
			const angle = moves((_, bends) => {
				bends[i]!.angle += 1e-4;
			});
			const turned = moves((_, bends) => {
				bends[i]!.rotation += 1e-4;
			});
			const turn = i === 0 ? 0 : turned;
			const mark = moves((straights) => {
				straights[i]! += 1e-4;
				straights[i + 1]! -= 1e-4;
			});
			const off = (turned: number, marked: number) => (0.2 * angle) ** 2 + (turned * turn) ** 2 + (marked * mark) ** 2;
			now += off(0.33, SET);
			told += i === 3 ? off(0.33, SET) : off(0.1, READ);
		}
		expect(gainOfTelling(begin(job).state)).toBeCloseTo(Math.sqrt(now) - Math.sqrt(told), 3);
	});

	it('is said at the first set-up of a bend in space that others follow, not at the first bend, the last or a second set-up', () => {
		let run = begin(job);
		const said: boolean[] = [];
		for (const i of run.state.bends.keys()) {
			const pays = tellingPays(run.state);
			said.push(pays.length > 0);
			expect(open(run, 'set').cautions).toEqual(expect.arrayContaining(pays));
			const set = give(run, { ready: true });
			if (i === 1) expect(tellingPays(set.state)).toEqual([]);
			run = bendAsAsked(run);
		}
		expect(said).toEqual([false, true, false, false]);
	});

	it('is not said where it would not bring the far end nearer by half of what a length may be off', () => {
		const wide = begin({ ...job, tolerance: { ...job.tolerance, length: 1 } });
		expect(tellingPays(bendAsAsked(wide).state)).toEqual([]);
	});
});
