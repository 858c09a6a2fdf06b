import { describe, expect, it } from 'vitest';
import { ELSEWHERE } from '../../../src/practice/other-shops.ts';
import { draws } from '../../../src/practice/random.ts';
import { Station } from '../../../src/practice/station.ts';
import { USUAL_SHOP } from '../../../src/practice/world.ts';
import { markSd } from '../../../src/session/estimate/hands.ts';
import type { Ask, DecideAsk } from '../../../src/session/protocol/asks.ts';
import type { Job } from '../../../src/tube/job.ts';
import { CHECKED_JOBS } from '../../bench/advice-jobs.ts';
import { driven } from '../../bench/driven.ts';
import { startOf } from '../../bench/fit-made.ts';

const [HOOP, BRACE] = ['main hoop', 'brace in space'].map(
	(named) => CHECKED_JOBS.find(({ name }) => name === named)!,
) as [Job, Job];
const SHOPS = [USUAL_SHOP, ...Object.values(ELSEWHERE)];

/** The hands that set the tube at a mark which lies off by so many of its own errors, without knowing it. */
class Misled extends Station {
	wrong = { bend: 0, by: 0, sd: 0 };

	override see(ask: Ask) {
		if (ask.ask !== 'set' || ask.seat !== 1 || ask.bend !== this.wrong.bend) return super.see(ask);
		const { fromStart, fromFarEnd } = ask.mark;
		const by = this.wrong.by * this.wrong.sd;
		return super.see({ ...ask, mark: { ...ask.mark, fromStart: fromStart + by, fromFarEnd: fromFarEnd - by } });
	}
}

/** What was decided on a tube one of whose marks is wrong. */
function decisions(job: Job, seed: number, wrong: { bend: number; by: number }): DecideAsk[] {
	const draw = draws(seed);
	const world = { ...SHOPS[(seed % 100_000) % SHOPS.length]!, blunders: { off: 0, swapped: 0 } };
	const station = new Misled(job, world, draw);
	station.wrong = { ...wrong, sd: markSd(startOf(job)) };
	const asked: DecideAsk[] = [];
	driven(startOf(job), { station, world, draw }, (open) => {
		if (open.ask === 'decide') asked.push(open);
	});
	return asked;
}

describe('a mark beside the wrong one, measured again and in doubt still', () => {
	// Without the rule one hoop in 200 with a wrong mark was gone back to; the seed was looked for.
	it('is no ground to go back to a bend: something else is wrong', () => {
		const asked = decisions(HOOP, 5_900_012, { bend: 3, by: 3.5233076677247395 });
		expect(asked.map(({ of }) => of)).toContainEqual({ kind: 'mark', bend: 1 });
		for (const { advice } of asked) expect(['reopen', 'relieve', 'scrap']).not.toContain(advice);
	});
});

describe('a mark that the rest puts further off than any error is large', () => {
	// What the rest says of it scatters by more than its own error: by 17.8 of those the mark is off, where it was set off by 11.5.
	it('is asked for all the same, first, where errors explain the difference', () => {
		const asked = decisions(BRACE, 7_300_001, { bend: 4, by: -11.5 });
		const [first] = asked.filter(({ reason }) => reason.some(({ code }) => code === 'does-not-go'));
		expect(first).toMatchObject({ advice: 'measure', of: { kind: 'mark', bend: 4 } });
	});
});
