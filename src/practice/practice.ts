import { join } from 'node:path';
import { LiveSession } from '../journal/live.ts';
import type { NewPiece } from '../journal/pieces.ts';
import type { JobFile, Surroundings as SessionWorld } from '../journal/surroundings.ts';
import type { Action } from '../session/protocol/action.ts';
import type { Ask } from '../session/protocol/asks.ts';
import type { Output } from '../session/protocol/notes.ts';
import type { Lesson } from '../springback/history.ts';
import { operatorAnswer, type WhyScrapped } from './operator.ts';
import { type Draw, draws } from './random.ts';
import { type Sight, Station } from './station.ts';
import type { World } from './world.ts';

/** Logs of practice sessions lie in a home of their own, so that they never teach a real one. */
export function practiceHome(home: string): string {
	return join(home, 'practice');
}

/** A session on a simulated bender: the same core and the same log, and what the instruments show beside it. */
export interface Practice {
	session: LiveSession;
	station: Station;
	world: World;
	draw: Draw;
}

/** Begins a practice session under the program's home; of a job of several pieces the first. Throws NotSaved when its log cannot be made. */
export function beginPractice(file: JobFile, world: World, seed: number, about: SessionWorld): Practice {
	const draw = draws(seed);
	const station = new Station(file.job, world, draw);
	const isBatch = file.job.quantity > 1;
	const piece = { simulated: { seed }, ...(isBatch && { piece: 1 }) };
	const session = LiveSession.begin({ ...about, home: practiceHome(about.home) }, file, isBatch, [], [], piece);
	return { session, station, world, draw };
}

/** Begins the next piece of a batch: another tube on the same bender, with what the pieces before it taught. Throws as beginPractice. */
export function nextPractice(
	before: Practice,
	file: JobFile,
	about: SessionWorld,
	{ lessons, piece }: { lessons: readonly Lesson[]; piece: NewPiece },
): Practice {
	const { station, world, draw } = before;
	station.freshTube();
	const { simulated } = before.session.state.start;
	const session = LiveSession.begin({ ...about, home: practiceHome(about.home) }, file, true, [], lessons, {
		...piece,
		...(simulated && { simulated }),
	});
	return { session, station, world, draw };
}

/** One turn of a practice session: what was asked, seen and answered, and what came of it. */
export interface PracticeStep {
	ask: Ask;
	sight: Sight;
	action: Action;
	outputs: readonly Output[];
}

/** A session that has not ended after so many answers goes round in a circle. */
const MOST_STEPS = 2000;
/** A number keyed wrong that cannot be is refused, and keyed again; more often than this in a row nobody keys wrong. */
const MOST_REFUSED = 8;

/** Plays the operator too, to the session's end. Throws when the session goes on refusing, or does not end. */
export function* playedOut({ session, station, world, draw }: Practice, why: WhyScrapped): Generator<PracticeStep> {
	let refusals = 0;
	for (let i = 0; i < MOST_STEPS; i++) {
		const { ask } = session;
		if (ask === null) return;
		const sight = station.see(ask);
		const action = operatorAnswer(ask, sight, world, draw, why);
		const outputs = session.answer({ action });
		const refused = outputs.find((output) => 'note' in output && output.note === 'refused');
		refusals = refused ? refusals + 1 : 0;
		if (refusals > MOST_REFUSED) {
			throw new Error(`the simulated operator's answer was refused: ${JSON.stringify(refused)}`);
		}
		if (refused) continue;
		station.did(ask, action);
		yield { ask, sight, action, outputs };
	}
	throw new Error(`the practice session did not end within ${MOST_STEPS} answers`);
}
