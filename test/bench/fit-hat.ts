/** Hats bent by whole sessions at the simulated bender, and what their made errors would have come to on the drawing's numbers. */
import { draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { type TrueBend, trueShape } from '../../src/practice/true-tube.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { tubeAtWork } from '../../src/session/estimate/tube-at-work.ts';
import type { State } from '../../src/session/log/state.ts';
import { drawingNumbers } from '../../src/session/plan/correction.ts';
import type { Numbers } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { driven } from './driven.ts';
import { startOf, trimmed } from './fit-made.ts';

/** The stated shop: angle finder .2, marks half a division of a 1/32 tape, rotations .4, nobody keys a wrong number. */
export const STATED: World = {
	...USUAL_SHOP,
	finder: { ...USUAL_SHOP.finder, sd: 0.2 },
	operator: { ...USUAL_SHOP.operator, turning: 0.4, marking: 0.5 },
	blunders: { off: 0, swapped: 0 },
};
/** A usual shop, wrong numbers and all, with such a finder and such hands. */
export const shopWith = (finder: number, hands: Pick<World['operator'], 'turning' | 'marking' | 'taping'>): World => ({
	...USUAL_SHOP,
	finder: { ...USUAL_SHOP.finder, sd: finder },
	operator: { ...USUAL_SHOP.operator, ...hands },
});
const STRETCH = 0.008;

export interface SessionTube {
	state: State;
	truth: Shape;
	/** The same made errors on the numbers of the drawing. */
	kept: Shape;
	bends: readonly TrueBend[];
}

/** Null for a tube that the advice had scrapped. */
export function sessionTube(job: Job, seed: number, world: World): SessionTube | null {
	const draw = draws(seed);
	const trueJob = { ...job, tooling: { ...job.tooling, stretch: draw.uniform(0, STRETCH) } };
	const station = new Station(trueJob, world, draw);
	const set: Numbers[] = [];
	const state = driven(startOf(job), { station, world, draw }, (open, before) => {
		if (open.ask === 'set' && open.seat === 1) set[open.bend - 1] = before.plan.current[open.bend - 1]!;
	});
	return state.phase.at === 'done' && state.phase.scrapped ? null : finished(state, station, trueJob, set);
}

function finished(state: State, station: Station, job: Job, set: readonly Numbers[]): SessionTube {
	const bends = station.trueBends;
	const believed = tubeAtWork(state, state.plan.current);
	const drawing = drawingNumbers(state);
	const moved = bends.map((bend, i): TrueBend => {
		const by = (of: keyof Numbers) => drawing[i]![of] - (of === 'angle' ? state.bends[i]!.target : set[i]![of]);
		const angle = bend.angle + by('angle');
		return {
			...bend,
			mark: bend.mark + by('fromStart'),
			rotation: bend.rotation + (i === 0 ? 0 : by('rotation')),
			angle,
			wrapped: bend.wrapped + by('angle'),
		};
	});
	const piece = state.piece;
	return {
		state,
		bends,
		truth: trimmed(
			trueShape(bends, piece, job),
			{ start: believed.trimStart, end: Math.max(0, believed.trimEnd) },
			state,
		),
		kept: trimmed(trueShape(moved, state.design.cut, job), job.trim, state),
	};
}
