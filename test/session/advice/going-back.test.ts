import { describe, expect, it } from 'vitest';
import { draws } from '../../../src/practice/random.ts';
import { Station } from '../../../src/practice/station.ts';
import { USUAL_SHOP } from '../../../src/practice/world.ts';
import type { State } from '../../../src/session/log/state.ts';
import type { DecideAsk } from '../../../src/session/protocol/asks.ts';
import { JOBS } from '../../bench/advice-jobs.ts';
import { driven } from '../../bench/driven.ts';
import { startOf } from '../../bench/fit-made.ts';

const HOOP = JOBS.find(({ name }) => name === 'main hoop')!;

/** What was asked at `decide`, and where, while a simulated usual shop bent this hoop. */
function decisions(seed: number): { asked: DecideAsk; before: State }[] {
	const draw = draws(seed);
	const job = { ...HOOP, tooling: { ...HOOP.tooling, stretch: draw.uniform(0, 0.008) } };
	const station = new Station(job, USUAL_SHOP, draw);
	const list: { asked: DecideAsk; before: State }[] = [];
	driven(startOf(HOOP), { station, world: USUAL_SHOP, draw }, (open, before) => {
		if (open.ask === 'decide') list.push({ asked: open, before });
	});
	return list;
}

describe('going back to a made bend', () => {
	// One hoop in sixty is gone back to; the seeds were looked for.
	it('is advised before the tube is missed, where much of the chance is', () => {
		const { asked, before } = decisions(5_901_665).find(({ asked: { advice } }) => advice === 'reopen')!;
		expect(asked.accepted.within).toBe(true);
		const gain = asked.reason.find(({ code }) => code === 'reopen-would');
		if (gain?.code !== 'reopen-would') throw new Error('no gain is told');
		expect(gain.chance - gain.before).toBeGreaterThanOrEqual(0.1);
		const { made, target } = before.bends[gain.bend - 1]!;
		expect(made!.angle).toBeLessThan(target);
	});

	it('has all that little else shows measured again before', () => {
		const asked = decisions(5_901_578).map(({ asked: each }) => each);
		const back = asked.findIndex(({ advice }) => advice === 'reopen');
		const before = asked.slice(0, back).filter(({ reason }) => reason.some(({ code }) => code === 'measure-first'));
		// One span from end to end says little of each of four marks, and nothing else says more of it.
		for (const bend of [1, 2, 3, 4]) expect(before.map(({ of }) => of)).toContainEqual({ kind: 'mark', bend });
		expect(before.map(({ of }) => of)).toContainEqual({ kind: 'check', name: 'feet apart' });
		expect(new Set(before.map(({ of }) => JSON.stringify(of))).size).toBe(before.length);
		for (const { advice } of before) expect(advice).toBe('measure');
	});
});
