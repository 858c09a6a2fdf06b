/** The bound against plain rules that are simulated: no rule may come under it. */
import { describe, expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import { type Chances, fewestPulls, type Kind } from './stops-bound.ts';

const CHANCES: Chances = { stopping: 0.25, seat: 0.25, loaded: 0.2, before: null, after: 0.25, finder: 0.18 };
const BENDS = 6000;

/** Pulls in a fresh seat each time, the first to one aim below the target and the rest to another, until the finder shows the bend in its band or over. */
function plainRule({ chances, asked, first }: Kind, aims: { first: number; later: number }) {
	const draw = draws(941_000);
	let [pulls, over, short] = [0, 0, 0];
	for (let bend = 0; bend < BENDS; bend++) {
		let [angle, read] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
		for (let pull = 0; read < -asked.under; pull++) {
			const aim = pull === 0 ? aims.first + draw.normal(0, first) : aims.later;
			// The aim lies anywhere between two stops.
			const off = draw.uniform(-0.5, 0.5) * asked.step + draw.normal(0, Math.hypot(chances.stopping, chances.seat));
			angle = Math.max(angle, aim + off);
			read = angle + draw.normal(0, chances.finder);
			pulls += 1;
		}
		if (angle > asked.over) over += 1;
		if (angle < -asked.under) short += 1;
	}
	return { pulls: pulls / BENDS, over: over / BENDS, short: short / BENDS };
}

describe('the fewest pulls that any rule can take', () => {
	const half = { under: 0.5, over: 0.5, step: 0.1 };
	const narrow = { under: 0.25, over: 0.25, step: 0.1 };
	it.each([
		[
			'a first pull within a degree and a half',
			{ chances: CHANCES, asked: half, first: 1.5 },
			{ first: -4, later: -0.3 },
		],
		['a narrow band', { chances: CHANCES, asked: narrow, first: 0 }, { first: -0.5, later: -0.5 }],
	])('lies under what a plain rule takes, and not at nothing: %s', (_, kind, aims) => {
		const { pulls, ...parts } = plainRule(kind, aims);
		const fewest = fewestPulls([kind], parts);
		expect(fewest).toBeLessThan(pulls);
		expect(fewest).toBeGreaterThanOrEqual(0.95);
	});
});
