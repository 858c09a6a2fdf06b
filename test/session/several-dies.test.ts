import { describe, expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { rawTube } from '../../src/session/estimate/tube-at-work.ts';
import { learnedPrior, type Start } from '../../src/session/log/start.ts';
import type { State } from '../../src/session/log/state.ts';
import { mechanicsPrior } from '../../src/springback/mechanics.ts';
import { machinesOf } from '../../src/springback/several-dies.ts';
import { dieOf } from '../../src/tube/dies.ts';
import type { Job } from '../../src/tube/job.ts';
import { driven } from '../bench/driven.ts';
import { begin, give, giveAll, open, type Run, startOf } from '../helpers/session/session-run.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

const JOB = twoDieJob();

/** The die that is to go in at the open set-up, or null. */
function change(run: Run): { die: string; from: string | null } | null {
	const found = open(run, 'set').cautions.find((caution) => caution.code === 'change-die');
	return found ? { die: found.die, from: found.from } : null;
}

/** Sets, pulls and measures the open bend as wanted, and takes it; a bend that is asked for again is pulled again. */
function bent(run: Run): Run {
	const pull = give(run, { ready: true });
	const { stop, target } = open(pull, 'pull');
	const measured = giveAll(pull, { loaded: stop }, { angles: [target, target] });
	return give(measured, { do: 'accept' });
}

describe('a session of two dies', () => {
	it('names the die at each set-up, and says when another goes in: the first, and at each change', () => {
		let run = begin(JOB);
		expect(open(run, 'set').die).toBe('tight');
		expect(change(run)).toEqual({ die: 'tight', from: null });
		run = bent(run);
		expect(open(run, 'set').die).toBe('wide');
		expect(change(run)).toEqual({ die: 'wide', from: 'tight' });
		run = bent(run);
		expect(change(run)).toBeNull();
		run = bent(run);
		expect(change(run)).toEqual({ die: 'tight', from: 'wide' });
		expect(open(give(run, { ready: true }), 'pull').bend).toBe(4);
	});

	it('says it again when the set-up is taken back, and for a bend that is gone back to', () => {
		const second = bent(begin(JOB));
		const back = give(give(second, { ready: true }), { undo: true });
		expect(change(back)).toEqual({ die: 'wide', from: 'tight' });
		const set = give(second, { ready: true });
		const again = give(set, { reopen: { bend: 1, do: 'pull' } });
		expect(open(again, 'set')).toMatchObject({ bend: 1, die: 'tight', seat: 2 });
		expect(change(again)).toEqual({ die: 'tight', from: 'wide' });
	});

	it('says nothing of dies where there is one', () => {
		const set = open(
			begin(twoDieJob({ shape: { kind: 'bends', bends: [{ straight: 9, angle: 30, rotation: 0 }], last: 9 } })),
			'set',
		);
		expect(set).not.toHaveProperty('die');
		expect(set.cautions.map(({ code }) => code)).not.toContain('change-die');
	});

	it('stops each bend by its own machine limit', () => {
		const low = begin(twoDieJob({}, { maxAngle: 60 }));
		expect(open(give(low, { ready: true }), 'pull')).toMatchObject({ stop: 60, limit: true });
		const other = begin(twoDieJob({ tooling: { maxAngle: 60 } }, { maxAngle: 180 }));
		expect(open(give(other, { ready: true }), 'pull').stop).toBeGreaterThan(60);
	});

	it('lays each arc with the radius, stretch and offset of its die, made or to come', () => {
		const job = twoDieJob(
			{ tooling: { growth: 1.02, stretch: 0.003, markOffset: 0.1 } },
			{ growth: 1.03, stretch: 0.001, markOffset: -0.2 },
		);
		const run = bent(begin(job));
		const { state } = run;
		const [first, second] = rawTube(state, state.plan.current).bends;
		// Nothing read yet tells of a radius.
		expect(first!.radius).toBeCloseTo(4.5 * 1.03, 6);
		expect(second!.radius).toBeCloseTo(7 * 1.02, 6);
		const { mark } = open(run, 'set');
		const { mark: marked, made } = state.bends[0]!;
		const end = marked! - 0.2 + (4.5 * 1.03 * Math.PI * made!.angle) / 180 / 1.001;
		expect(mark.fromLastBend).toBeCloseTo(mark.fromStart - end, 6);
		// The corners hold: each arc that grows takes its setback's growth of the straight.
		const setback = (grows: number, angle: number) => grows * Math.tan((angle * Math.PI) / 360);
		const between = 14 - setback(4.5 * 0.03, 70) - setback(7 * 0.02, 25);
		expect(state.design.shape.straights[1]).toBeCloseTo(between, 9);
	});

	it('takes a leg that was measured to the mark by the offset of the bend’s own die', () => {
		const job = twoDieJob({ tooling: { markOffset: 0.25 } }, { markOffset: -0.5 });
		const set = give(bent(begin(job)), { ready: true });
		const { fromLastBend } = open(bent(begin(job)), 'set').mark;
		const told = give(set, { evidence: { kind: 'leg', bend: 2, reading: fromLastBend! + 0.25 } });
		expect(told.state.bends[1]!.mark).toBeCloseTo(set.state.bends[1]!.mark!, 6);
	});
});

/** Tubes one after the other on one simulated bender, each taught by those before it. */
function shop(
	job: Job,
	seed: number,
	tubes: number,
): { starts: Start[]; states: State[]; firsts: Map<number, number[]> } {
	const draw = draws(seed);
	const station = new Station(job, USUAL_SHOP, draw);
	const [starts, states]: [Start[], State[]] = [[], []];
	const firsts = new Map<number, number[]>();
	for (let tube = 0; tube < tubes; tube++) {
		if (tube > 0) station.freshTube();
		const lessons = states.flatMap((state) => lessonOf(state) ?? []);
		const at = new Date(Date.UTC(2026, 0, 1, tube)).toISOString();
		const start = { ...startOf(job), ...learnedPrior(job, lessons), learn: true, id: `tube ${tube}`, at };
		starts.push(start);
		states.push(
			driven(start, { station, world: USUAL_SHOP, draw }, (asked) => {
				if (asked.ask !== 'pull' || asked.pull > 1) return;
				const miss = (station.trueAngles[asked.bend - 1]! - asked.expect.angle) / asked.expect.sd;
				firsts.set(tube, [...(firsts.get(tube) ?? []), miss]);
			}),
		);
	}
	return { starts, states, firsts };
}

const pullsOn = (state: State, die: string) =>
	state.bends.filter((_, i) => dieOf(state.start.job, i + 1) === die).reduce((sum, { pulls }) => sum + pulls.length, 0);

describe('a shop that bends with two dies', () => {
	const SHOPS = 12;
	const shops = Array.from({ length: SHOPS }, (_, i) => shop(JOB, 640_000 + i, 3));

	it('learns each die: fewer pulls on both, and what is said of first pulls is so', () => {
		const all = (tube: number, die: string) => shops.reduce((sum, { states }) => sum + pullsOn(states[tube]!, die), 0);
		for (const die of ['wide', 'tight']) expect(all(2, die)).toBeLessThan(all(0, die));
		const misses = shops.flatMap(({ firsts }) => [...firsts.values()].flat());
		const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss ** 2, 0) / misses.length);
		// Of 144 numbers of variance 1 the root mean square lies between .81 and 1.19 with 99.9 %: by the chi-square distribution.
		expect(misses).toHaveLength(144);
		expect(spread).toBeGreaterThan(0.75);
		expect(spread).toBeLessThan(1.25);
	});

	it('knows both dies better with every tube, and the growth of each for itself', () => {
		for (const { starts } of shops) {
			const [first, , third] = starts as [Start, Start, Start];
			for (const die of ['wide', 'tight']) {
				const spread = ({ prior }: Start) => machinesOf(prior, [die]).cov[1]![1]!;
				expect(spread(third)).toBeLessThan(spread(first));
			}
			const cold = (clr: number) => mechanicsPrior(JOB.tube, clr, JOB.tube.material).growth;
			expect(first.growth).toBe(cold(7));
			expect(first.dies!.tight!.growth).toBe(cold(4.5));
			expect(third.growth).not.toBe(cold(7));
			expect(third.dies!.tight!.growth).not.toBe(cold(4.5));
			expect(third.dies!.tight!.from!.exact.sessions).toBe(2);
		}
	});

	it('teaches a job on one of its dies alone', () => {
		const { states } = shops[0]!;
		const lessons = states.flatMap((state) => lessonOf(state) ?? []);
		const { shape: _, tooling, ...rest } = JOB;
		const alone: Job = {
			...rest,
			tooling: { ...tooling, die: 'tight', clr: 4.5, dies: {} },
			shape: { kind: 'bends', bends: [{ straight: 12, angle: 45, rotation: 0 }], last: 12 },
		};
		const { from } = learnedPrior(alone, lessons);
		expect(from!.exact).toEqual({
			sessions: 3,
			pulls: states.reduce((sum, state) => sum + pullsOn(state, 'tight'), 0),
		});
	});
});
