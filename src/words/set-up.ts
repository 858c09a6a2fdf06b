import type { SetUpView } from '../session/report/set-ups.ts';
import type { TubeTurn } from '../tube/turns.ts';
import type { Ruled } from './lengths.ts';
import { angle, notNothing, tape } from './numbers.ts';
import { WAYS } from './readings.ts';

/** How the tube is turned in the machine: `no turn`, `turn 180° either way`. */
function turnOfSetUp({ degrees, way }: TubeTurn): string {
	return way === 'none' ? WAYS.none : `turn ${angle(degrees)} ${WAYS[way]}`;
}

/** The mark and the turn that were asked for: `mark 10 3/8 in, no turn`. */
export function askedForWords({ mark, turn }: { mark: { fromStart: number }; turn: TubeTurn }, job: Ruled): string {
	return `mark ${tape(mark.fromStart, job)}, ${turnOfSetUp(turn)}`;
}

/** A set-up as asked for, and what of it was made otherwise. */
export function setUpWords({ mark, turn, rotation }: SetUpView, job: Ruled): string {
	if (mark.asked === null || turn.asked === null) return '';
	const markMade = mark.made !== null && mark.made.fromStart !== mark.asked.fromStart;
	const turnMade = turn.made !== null && rotation.made !== rotation.asked;
	const really = [
		...(markMade ? [`mark ${notNothing(mark.made!.fromStart, job)}`] : []),
		...(turnMade ? [turnOfSetUp(turn.made!)] : []),
	];
	return `${askedForWords({ mark: mark.asked, turn: turn.asked }, job)}${really.length > 0 ? `; really ${really.join(', ')}` : ''}`;
}
