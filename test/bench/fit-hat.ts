/** Hats bent by whole sessions at the simulated bender, and what their made errors would have come to on the drawing's numbers. */
import { operatorAnswer } from '../../src/practice/operator.ts';
import { draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { type TrueBend, trueShape } from '../../src/practice/true-tube.ts';
import { USUAL, type World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { tubeAtWork } from '../../src/session/as-built.ts';
import { ask } from '../../src/session/ask.ts';
import { drawingNumbers } from '../../src/session/correction.ts';
import { evolve, initial } from '../../src/session/fold.ts';
import type { Action, Numbers } from '../../src/session/protocol.ts';
import { nextEntry, type State } from '../../src/session/state.ts';
import type { Job } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { startOf, trimmed } from './fit-made.ts';

/** The stated shop: angle finder .2, marks half a division of a 1/32 tape, rotations .4, nobody keys a wrong number. */
const STATED: World = {
	...USUAL,
	finder: { ...USUAL.finder, sd: 0.2 },
	operator: { ...USUAL.operator, turning: 0.4, marking: 0.5 },
	blunders: { off: 0, swapped: 0 },
};
const STRETCH = 0.008;
/** A session that will not end is given up: it never came near this. */
const MOST_ANSWERS = 400;

export interface SessionTube {
	state: State;
	truth: Shape;
	/** The same made errors on the numbers of the drawing. */
	kept: Shape;
	bends: readonly TrueBend[];
}

/** Null for a tube that the advice had scrapped. */
export function sessionTube(job: Job, seed: number): SessionTube | null {
	const draw = draws(seed);
	const trueJob = { ...job, tooling: { ...job.tooling, stretch: draw.uniform(0, STRETCH) } };
	const station = new Station(trueJob, STATED, draw);
	let state = initial(startOf(job));
	const set: Numbers[] = [];
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null)
			return state.phase.at === 'done' && state.phase.scrapped ? null : finished(state, station, trueJob, set);
		const action = operatorAnswer(open, station.see(open), STATED, draw);
		if (open.ask === 'set' && open.seat === 1) set[open.bend - 1] = state.plan.current[open.bend - 1]!;
		station.did(open, action);
		state = answered(state, action);
	}
	throw new Error(`the session of seed ${seed} does not end`);
}

function answered(state: State, action: Action): State {
	const decision = answerEvents({ action }, state);
	if ('refused' in decision) throw new Error(decision.refused.why);
	return evolve(state, { entry: nextEntry(state), at: state.start.at, events: decision.events });
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
